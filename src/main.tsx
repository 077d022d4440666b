import { createRoot } from 'react-dom/client';

import { App } from './app/shell/App.tsx';
import { openServices } from './app/state/open-services.ts';
import { indexedDbRepository } from './storage/indexed-db-repository.ts';
import { memoryRepository } from './storage/memory-repository.ts';
import './app/shell/theme.css';
import './app/shell/shell.css';
import './app/ui/ui.css';

const newId = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(12)), (byte) => (byte % 36).toString(36)).join(
    '',
  );

const root = document.getElementById('app');
if (root === null) throw new Error('index.html has no element #app');

const repository = 'indexedDB' in window ? indexedDbRepository('undersky') : memoryRepository();
const services = await openServices({ repository, newId, nowMs: () => Date.now() });
createRoot(root).render(<App services={services} />);
