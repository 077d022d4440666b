import { useEffect, useState, type ReactNode } from 'react';

import { say } from '../state/view.ts';
import { watchVersions, type VersionNews } from './app-versions.ts';
import './new-version.css';

type Offered = Extract<VersionNews, { readonly kind: 'ready' | 'taken-elsewhere' }>;

/** Says that a newer version is there, and takes it when asked to. */
export function NewVersion(): ReactNode {
  const [offered, setOffered] = useState<Offered | null>(null);
  useEffect(function keepTheApp() {
    if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
    const tell = (news: VersionNews): void => {
      switch (news.kind) {
        case 'kept':
          return say('Undersky is on this device now and opens without a network.');
        case 'not-kept':
          return say('This browser could not keep Undersky for use without a network.');
        case 'ready':
        case 'taken-elsewhere':
          return setOffered(news);
      }
    };
    const reload = (): void => window.location.reload();
    watchVersions({ container: navigator.serviceWorker, tell, reload }).catch(() =>
      tell({ kind: 'not-kept' }),
    );
  }, []);
  return offered && <VersionOffer offered={offered} onLater={() => setOffered(null)} />;
}

type VersionOfferProps = { readonly offered: Offered; readonly onLater: () => void };

export function VersionOffer({ offered, onLater }: VersionOfferProps): ReactNode {
  const [taking, setTaking] = useState(false);
  const take = (): void => {
    setTaking(true);
    if (offered.kind === 'ready') offered.use();
    else window.location.reload();
  };
  return (
    <section className="new-version" role="status" aria-label="New version">
      <p>
        {offered.kind === 'ready'
          ? 'A new version is ready. Everything you have entered stays.'
          : 'Another tab has taken the new version. Open this one again before you go on here.'}
      </p>
      <div>
        <button type="button" className="first" data-take-version disabled={taking} onClick={take}>
          {offered.kind === 'ready' ? 'Use it now' : 'Open again'}
        </button>
        <button type="button" data-version-later disabled={taking} onClick={onLater}>
          Later
        </button>
      </div>
    </section>
  );
}
