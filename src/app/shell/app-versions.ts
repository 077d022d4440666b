/** What became of the app's own files in the browser's keeping. */
export type VersionNews =
  /** Everything is on this device for the first time. */
  | { readonly kind: 'kept' }
  /** The browser could not keep the files. */
  | { readonly kind: 'not-kept' }
  /** A newer version waits; `use` takes it and opens the page again. */
  | { readonly kind: 'ready'; readonly use: () => void }
  /** Another tab of the app has taken the newer version. */
  | { readonly kind: 'taken-elsewhere' };

type Watched = {
  readonly container: ServiceWorkerContainer;
  readonly tell: (news: VersionNews) => void;
  readonly reload: () => void;
};

const WORKER = './sw.js';

/**
 * Registers the worker that keeps the app's files, and tells when a newer version has been fetched
 * whole. That version waits until it is asked for: the page in use is never changed under the hand.
 */
export const watchVersions = async ({ container, tell, reload }: Watched): Promise<void> => {
  let controlled = container.controller !== null;
  let asked = false;
  const offer = (worker: ServiceWorker): void =>
    tell({
      kind: 'ready',
      use: () => {
        asked = true;
        worker.postMessage({ type: 'SKIP_WAITING' });
      },
    });
  container.addEventListener('controllerchange', () => {
    if (asked) reload();
    else if (controlled) tell({ kind: 'taken-elsewhere' });
    controlled = true;
  });

  // Where service workers are switched off, some browsers answer with nothing.
  const registration: ServiceWorkerRegistration | undefined = await container.register(WORKER);
  if (registration === undefined) return;
  const follow = (worker: ServiceWorker): void => {
    const first = registration.active === null;
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && !first) offer(worker);
      if (worker.state === 'activated' && first) tell({ kind: 'kept' });
      if (worker.state === 'redundant' && first) tell({ kind: 'not-kept' });
    });
  };
  registration.addEventListener('updatefound', () => {
    if (registration.installing !== null) follow(registration.installing);
  });
  if (registration.installing !== null) follow(registration.installing);
  if (registration.waiting !== null && registration.active !== null) offer(registration.waiting);
};
