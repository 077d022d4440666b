import { lazy, Suspense, useEffect, useState, useSyncExternalStore, type ReactNode } from 'react';

import { DocumentsProvider } from '../state/documents.tsx';
import { lazyPart } from '../state/lazy-part.ts';
import { lastShootId } from '../state/open-services.ts';
import { ServicesContext, type Services } from '../state/services.ts';
import { say, useView } from '../state/view.ts';
import { Bar } from './Bar.tsx';
import { SCREENS, screenOf, type ScreenPath } from './route.ts';
import { SCREEN_MODULES, useOtherScreens } from './screen-modules.ts';

const ScoutScreen = lazy(async () => ({
  default: (await SCREEN_MODULES.scout()).ScoutScreen,
}));
const DayScreen = lazy(async () => ({
  default: (await SCREEN_MODULES.day()).DayScreen,
}));
const SetupScreen = lazy(async () => ({
  default: (await SCREEN_MODULES.setup()).SetupScreen,
}));
const KitScreen = lazy(async () => ({
  default: (await SCREEN_MODULES.kit()).KitScreen,
}));
const CallSheetScreen = lazy(async () => ({
  default: (await SCREEN_MODULES.callSheet()).CallSheetScreen,
}));
const NewVersion = lazyPart(async () => (await SCREEN_MODULES.newVersion()).NewVersion);

export function App({ services }: { readonly services: Services }): ReactNode {
  const [shootId, setShootId] = useState<string | null>(null);
  const path = screenOf(useHash());
  const settled = useView((view) => view.settled);
  useOtherScreens();
  useEffect(
    function openLastShoot() {
      void lastShootId(services.repository).then(setShootId);
    },
    [services.repository],
  );
  useEffect(
    function sweepPhotos() {
      if (settled) void services.repository.sweepBlobs(services.nowMs());
    },
    [services, settled],
  );
  const open = (id: string): void => {
    void services.repository.saveSetting('open-shoot', id);
    setShootId(id);
  };
  const waiting = <p className="waiting">Opening the shoot…</p>;
  if (shootId === null) return waiting;
  return (
    <ServicesContext value={services}>
      <DocumentsProvider shootId={shootId} kitId="kit" waiting={waiting}>
        <div className="shell">
          <Bar path={path} onOpenShoot={open} />
          <main className="screen">
            <Suspense fallback={<p className="waiting">Opening…</p>}>{screenAt(path)}</Suspense>
          </main>
          <Foot path={path} />
        </div>
        <Said />
        <Suspense>{settled ? <NewVersion /> : null}</Suspense>
      </DocumentsProvider>
    </ServicesContext>
  );
}

function screenAt(path: ScreenPath): ReactNode {
  switch (path) {
    case '/scout':
      return <ScoutScreen />;
    case '/day':
      return <DayScreen />;
    case '/setup':
      return <SetupScreen />;
    case '/kit':
      return <KitScreen />;
    case '/call-sheet':
      return <CallSheetScreen />;
  }
}

const Foot = ({ path }: { readonly path: ScreenPath }): ReactNode => (
  <nav className="foot" aria-label="Screens">
    {SCREENS.map((screen) => (
      <a
        key={screen.path}
        href={`#${screen.path}`}
        aria-current={screen.path === path ? 'page' : undefined}
      >
        {screen.title}
      </a>
    ))}
  </nav>
);

/** Long enough to read three sentences. */
const SAID_FOR_MS = 9000;

const Said = (): ReactNode => {
  const said = useView((view) => view.said);
  useEffect(
    function fade() {
      if (said === '') return undefined;
      const timer = setTimeout(() => say(''), SAID_FOR_MS);
      return () => clearTimeout(timer);
    },
    [said],
  );
  return (
    <output className="said" aria-live="polite">
      {said}
    </output>
  );
};

const useHash = (): string =>
  useSyncExternalStore(
    (changed) => {
      window.addEventListener('hashchange', changed);
      return () => window.removeEventListener('hashchange', changed);
    },
    () => window.location.hash,
  );
