import { afterEach, expect, test, vi } from 'vitest';

import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import { editShoot, editSpotFraming, removeSpot, type Edit } from '../../src/core/plan/edits.ts';
import type { Shoot } from '../../src/core/plan/shoot.ts';
import { defined } from '../support/defined.ts';
import type { openPage } from '../support/tab-page.ts';

type Tab = Awaited<ReturnType<typeof openPage>> & { readonly close: () => void };

const frames = new Set<HTMLIFrameElement>();

/** A frame has its own memory, locks and channel ends, as a tab has; only the origin's storage is one. */
const openTab = async (databaseName: string): Promise<Tab> => {
  const frame = document.createElement('iframe');
  document.body.append(frame);
  frames.add(frame);
  const script = defined(frame.contentDocument).createElement('script');
  script.type = 'module';
  // The test runner wraps imports made later; in a frame nobody does.
  script.textContent = `
    window.__vitest_browser_runner__ = { wrapDynamicImport: (load) => load() };
    window.opened = import(${JSON.stringify(new URL('/tests/support/tab-page.ts', location.href).href)})
      .then(({ openPage }) => openPage(${JSON.stringify(databaseName)}));`;
  frame.contentDocument?.body.append(script);
  const opened = await vi.waitFor(() => {
    const page: Promise<Awaited<ReturnType<typeof openPage>>> | undefined = Reflect.get(
      defined(frame.contentWindow),
      'opened',
    );
    return defined(page);
  });
  return {
    ...opened,
    close: () => {
      frame.remove();
      frames.delete(frame);
    },
  };
};

afterEach(() => {
  for (const frame of frames) frame.remove();
  frames.clear();
});

const SHOOT = { kind: 'shoot', id: 'demo' } as const;

const stamp = (tab: Tab): { entryId: string; authorId: string; atMs: number } => ({
  entryId: crypto.randomUUID(),
  authorId: tab.authorId,
  atMs: 1_810_000_000_000,
});

const change = async (tab: Tab, edit: Edit<Shoot>): Promise<void> => {
  expect(
    await tab.repository.edit({ ...SHOOT, edit, label: 'a change', stamp: stamp(tab) }),
  ).toMatchObject({ ok: true });
};

const undo = (tab: Tab): ReturnType<typeof tab.repository.undo> =>
  tab.repository.undo({ documents: [SHOOT], stamp: stamp(tab) });

const shootIn = async (tab: Tab): Promise<Shoot> => {
  const read = await tab.repository.read('shoot', 'demo');
  if (!read.ok) throw new Error(read.problem.kind);
  return read.value;
};

const twoTabs = async (): Promise<readonly [Tab, Tab]> => {
  const name = crypto.randomUUID();
  const tabs = [await openTab(name), await openTab(name)] as const;
  expect(await tabs[0].repository.create('shoot', demoShoot())).toMatchObject({ ok: true });
  return tabs;
};

test('one tab sees what the other changes', async () => {
  const [mine, other] = await twoTabs();
  const titles: string[] = [];
  const stop = other.repository.observe('shoot', 'demo', (answer) => {
    if (answer.ok) titles.push(answer.value.title);
  });
  await vi.waitFor(() => expect(titles).toEqual([demoShoot().title]));
  await change(mine, editShoot({ title: 'Octet' }));
  await vi.waitFor(() => expect(titles).toEqual([demoShoot().title, 'Octet']));
  stop();
});

test('two tabs turn and tilt the same spot, each undoes its own, and it outlives both', async () => {
  const [mine, other] = await twoTabs();
  const before = demoShoot().spots['pier']?.framing;
  await Promise.all([
    change(mine, editSpotFraming('pier', { bearingDeg: 12 })),
    change(other, editSpotFraming('pier', { tiltDeg: 33 })),
  ]);
  expect((await shootIn(mine)).spots['pier']?.framing).toEqual({
    ...before,
    bearingDeg: 12,
    tiltDeg: 33,
  });
  expect(await undo(mine)).toMatchObject({ ok: true, value: { leftAlone: [] } });
  expect((await shootIn(other)).spots['pier']?.framing).toEqual({ ...before, tiltDeg: 33 });
  expect(await undo(mine)).toMatchObject({ ok: false, problem: { kind: 'nothing-to-undo' } });
});

test('an undo after the other tab removed the spot says so and brings nothing back', async () => {
  const [mine, other] = await twoTabs();
  await change(mine, editSpotFraming('pier', { bearingDeg: 12 }));
  await change(other, removeSpot('pier'));
  expect(await undo(mine)).toMatchObject({
    ok: true,
    value: { leftAlone: ['Pier head, bearing: removed since, nothing to put back'] },
  });
  expect((await shootIn(mine)).spots['pier']).toBeUndefined();
});

test('a closed and reopened tab is the author it was and can still undo', async () => {
  const name = crypto.randomUUID();
  const first = await openTab(name);
  await first.repository.create('shoot', demoShoot());
  await change(first, editShoot({ title: 'Octet' }));
  const second = await openTab(name);
  expect(second.authorId).not.toBe(first.authorId);
  first.close();
  const again = await vi.waitFor(async () => {
    const tab = await openTab(name);
    if (tab.authorId !== first.authorId) {
      tab.close();
      throw new Error('the closed tab still holds its lock');
    }
    return tab;
  });
  expect(await undo(again)).toMatchObject({ ok: true, value: { label: 'a change' } });
  expect((await shootIn(second)).title).toBe(demoShoot().title);
});
