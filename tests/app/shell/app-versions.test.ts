import { beforeEach, describe, expect, test, vi } from 'vitest';
import { watchVersions, type VersionNews } from '../../../src/app/shell/app-versions.ts';

const worker = () =>
  Object.assign(new EventTarget(), {
    state: 'installing',
    postMessage: vi.fn<(message: unknown) => void>(),
  });

type Registration = EventTarget &
  Record<'installing' | 'waiting' | 'active', ReturnType<typeof worker> | null>;

/** The browser's side, played by hand after the Service Workers specification. */
const playedBrowser = (controlledBy: 'nothing' | 'a worker') => {
  const container = Object.assign(new EventTarget(), {
    controller: controlledBy === 'nothing' ? null : worker(),
    register: vi.fn<() => Promise<Registration>>(async () => registration),
  });
  const registration: Registration = Object.assign(new EventTarget(), {
    installing: null,
    waiting: null,
    active: container.controller,
  });
  const goTo = (one: ReturnType<typeof worker>, state: string): void => {
    one.state = state;
    registration.installing = state === 'installing' ? one : null;
    registration.waiting = state === 'installed' ? one : null;
    if (state === 'activated') registration.active = one;
    one.dispatchEvent(new Event('statechange'));
  };
  return {
    container: container as unknown as ServiceWorkerContainer,
    asked: container.register,
    registration,
    find: (): ReturnType<typeof worker> => {
      const found = worker();
      registration.installing = found;
      registration.dispatchEvent(new Event('updatefound'));
      return found;
    },
    goTo,
    takeOver: () => container.dispatchEvent(new Event('controllerchange')),
  };
};

const news: VersionNews[] = [];
const tell = (one: VersionNews): void => void news.push(one);
const reload = vi.fn<() => void>();

beforeEach(() => {
  news.length = 0;
  reload.mockClear();
});

describe('the first visit', () => {
  test('ends with everything kept, and nothing is offered or opened again', async () => {
    const browser = playedBrowser('nothing');
    await watchVersions({ container: browser.container, tell, reload });
    expect(browser.asked).toHaveBeenCalledExactlyOnceWith('./sw.js');
    const found = browser.find();
    browser.goTo(found, 'installed');
    browser.goTo(found, 'activated');
    browser.takeOver();
    expect(news).toEqual([{ kind: 'kept' }]);
    expect(reload).not.toHaveBeenCalled();
  });

  test('that could not fetch everything says so', async () => {
    const browser = playedBrowser('nothing');
    await watchVersions({ container: browser.container, tell, reload });
    browser.goTo(browser.find(), 'redundant');
    expect(news).toEqual([{ kind: 'not-kept' }]);
  });

  test('of a browser that answers with no registration goes on without', async () => {
    const browser = playedBrowser('nothing');
    browser.asked.mockResolvedValue(undefined as never);
    await watchVersions({ container: browser.container, tell, reload });
    expect(news).toEqual([]);
  });
});

describe('a newer version', () => {
  test('is offered once it is there whole, and taken only when asked for', async () => {
    const browser = playedBrowser('a worker');
    await watchVersions({ container: browser.container, tell, reload });
    const found = browser.find();
    expect(news).toEqual([]);
    browser.goTo(found, 'installed');
    const [offer] = news;
    if (offer?.kind !== 'ready') throw new Error('nothing was offered');
    expect(found.postMessage).not.toHaveBeenCalled();
    offer.use();
    expect(found.postMessage).toHaveBeenCalledExactlyOnceWith({ type: 'SKIP_WAITING' });
    expect(reload).not.toHaveBeenCalled();
    browser.goTo(found, 'activated');
    browser.takeOver();
    expect(reload).toHaveBeenCalledTimes(1);
    expect(news).toHaveLength(1);
  });

  test('that was left waiting is offered again at the next start', async () => {
    const browser = playedBrowser('a worker');
    browser.registration.waiting = worker();
    await watchVersions({ container: browser.container, tell, reload });
    expect(news.map(({ kind }) => kind)).toEqual(['ready']);
  });

  test('taken in another tab is told here and opens nothing', async () => {
    const browser = playedBrowser('a worker');
    await watchVersions({ container: browser.container, tell, reload });
    const found = browser.find();
    browser.goTo(found, 'installed');
    browser.goTo(found, 'activated');
    browser.takeOver();
    expect(news.map(({ kind }) => kind)).toEqual(['ready', 'taken-elsewhere']);
    expect(reload).not.toHaveBeenCalled();
  });

  test('that fails to come whole is not spoken of: the old one still works', async () => {
    const browser = playedBrowser('a worker');
    await watchVersions({ container: browser.container, tell, reload });
    browser.goTo(browser.find(), 'redundant');
    expect(news).toEqual([]);
  });
});
