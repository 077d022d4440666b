import { afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { SkylinePanel } from '../../../../../src/app/screens/scout/skyline/SkylinePanel.tsx';
import {
  obstacleCounts,
  sharesOf,
} from '../../../../../src/app/screens/scout/skyline/skyline-sources.ts';
import { DocumentsProvider, useShoot } from '../../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../../src/app/state/services.ts';
import { demoKit } from '../../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import type { Shoot } from '../../../../../src/core/plan/shoot.ts';
import type { Photo } from '../../../../../src/core/plan/spot-schema.ts';
import { fail, ok } from '../../../../../src/core/units/result.ts';
import { memoryRepository } from '../../../../../src/storage/memory-repository.ts';
import '../../../../../src/app/shell/theme.css';
import '../../../../../src/app/ui/ui.css';

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const figure = (name: string): string => find(`[data-figure="${name}"]`).textContent ?? '';
const expectFigure = (name: string, text: string | RegExp): Promise<void> =>
  vi.waitFor(() => expect(figure(name)).toMatch(text), { timeout: 5000 });

let services: Services;
let ids = 0;

beforeAll(async () => {
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    // 1 May 2027, 12:00 UTC.
    nowMs: () => Date.UTC(2027, 4, 1, 12),
  });
});
beforeEach(() => page.viewport(1000, 1400));
afterEach(() => vi.restoreAllMocks());

const Panel = (): React.ReactNode => {
  const shoot = useShoot();
  const spot = shoot.spots['pier'];
  return spot === undefined ? null : (
    <SkylinePanel
      spotId="pier"
      spot={spot}
      shares={sharesOf(spot)}
      counts={obstacleCounts(shoot)}
    />
  );
};

type Opened = {
  readonly shoot: () => Promise<Shoot>;
  readonly repository: ReturnType<typeof memoryRepository>;
  readonly leave: () => Promise<void>;
};

const open = async (given: Partial<Services>, shoot: Shoot = demoShoot()): Promise<Opened> => {
  const repository = given.repository ?? memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', shoot);
  const shown = await render(
    <ServicesContext value={{ ...services, ...given, repository }}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <Panel />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-figure="source-terrain"]'));
  return {
    repository,
    leave: () => shown.unmount(),
    shoot: async () => {
      const read = await repository.read('shoot', 'demo');
      if (!read.ok) throw new Error('the shoot is gone');
      return read.value;
    },
  };
};

const choose = (field: string, file: File): void => {
  const input = find(`[data-field="${field}"]`) as HTMLInputElement;
  const files = new DataTransfer();
  files.items.add(file);
  input.files = files.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
};

type Ran = {
  readonly kind: string;
  readonly input: {
    readonly eyeHeightM: number;
    readonly files: readonly { readonly name: string }[];
  };
  readonly progress: (share: number) => void;
  readonly signal: AbortSignal | undefined;
  readonly settle: (answer: unknown) => void;
};

/** A ground worker that does what the test says, when it says so. */
const heldGround = (): { readonly ground: Services['ground']; readonly ran: Ran[] } => {
  const ran: Ran[] = [];
  const run = (kind: string, input: unknown, hooks: Record<string, never> = {}): Promise<unknown> =>
    new Promise((settle) => {
      const { onProgress, signal } = hooks as unknown as {
        readonly onProgress: Ran['progress'];
        readonly signal?: AbortSignal;
      };
      ran.push({ kind, input: input as Ran['input'], progress: onProgress, signal, settle });
      signal?.addEventListener('abort', () => settle(fail({ kind: 'cancelled' })));
    });
  return { ground: { run } as unknown as Services['ground'], ran };
};

const answer = {
  altitudesDeg: Array.from({ length: 360 }, () => 3),
  ridgeDistanceKm: Array.from({ length: 360 }, () => 10),
  groundElevationM: 3,
  statedElevationM: 3,
  eyeElevationM: 4.4,
  voidShare: 0.02,
  uncoveredShare: 0,
  coveredKm: 40,
  sources: ['N45E013.hgt'],
  unusedFiles: [],
  absurdCount: 0,
};
const hgt = new File(['heights'], 'N45E013.hgt');

const startSensor = async (): Promise<void> => {
  find('[data-trace-by="phone"]').click();
  await vi.waitFor(() => find('[data-start-sensor]'));
  find('[data-start-sensor]').click();
};

const sendOrientation = (name: string, alpha: number | null, absolute: boolean): boolean =>
  window.dispatchEvent(new DeviceOrientationEvent(name, { alpha, beta: 5, gamma: 0, absolute }));

const openKeptPhoto = async (): Promise<void> => {
  find('[data-trace-by="photo"]').click();
  await vi.waitFor(() => find('[data-field="trace-spot-photo"]'));
  const select = find('[data-field="trace-spot-photo"]') as HTMLSelectElement;
  select.value = 'one';
  select.dispatchEvent(new Event('change', { bubbles: true }));
};

describe('terrain from files', () => {
  test('goes to the worker with the camera’s height, tells how far it is, and becomes one edit', async () => {
    const { ground, ran } = heldGround();
    const { shoot, repository } = await open({ ground });
    choose('elevation-files', hgt);
    await vi.waitFor(() => expect(ran).toHaveLength(1));
    expect(ran[0]?.kind).toBe('terrain-skyline');
    expect(ran[0]?.input.eyeHeightM).toBe(demoShoot().spots['pier']?.framing.cameraHeightM);
    expect(ran[0]?.input.files.map(({ name }) => name)).toEqual(['N45E013.hgt']);
    ran[0]?.progress(0.4);
    await expectFigure('terrain-progress', '40 %');
    ran[0]?.settle(ok(ok(answer)));
    await expectFigure(
      'source-terrain',
      /^N45E013\.hgt; ground 3 m, every way to 40 km, Sat 1 May 2027/,
    );
    await expectFigure('terrain-note', '2 % of the heights were missing');
    expect((await shoot()).spots['pier']?.terrain?.altitudesDeg).toEqual(answer.altitudesDeg);
    const stamp = { entryId: 'undo', authorId: services.authorId, atMs: 0 };
    const undone = await repository.undo({ documents: [{ kind: 'shoot', id: 'demo' }], stamp });
    expect(undone).toMatchObject({ ok: true, value: { label: 'terrain of Pier head' } });
    expect(await shoot()).toEqual(demoShoot());
  });

  test('is cancelled by a press: the worker hears it, nothing changes, and it can be begun again', async () => {
    const { ground, ran } = heldGround();
    const { shoot } = await open({ ground });
    choose('elevation-files', hgt);
    await vi.waitFor(() => find('[data-cancel-terrain]'));
    find('[data-cancel-terrain]').click();
    await expectFigure('terrain-fault', 'Cancelled: the terrain is what it was');
    expect(ran[0]?.signal?.aborted).toBe(true);
    expect(await shoot()).toEqual(demoShoot());
    choose('elevation-files', hgt);
    await vi.waitFor(() => expect(ran).toHaveLength(2));
    expect(ran[1]?.signal?.aborted).toBe(false);
  });

  test('is cancelled when the spot is left', async () => {
    const { ground, ran } = heldGround();
    const { shoot, leave } = await open({ ground });
    choose('elevation-files', hgt);
    await vi.waitFor(() => expect(ran).toHaveLength(1));
    await leave();
    expect(ran[0]?.signal?.aborted).toBe(true);
    expect(await shoot()).toEqual(demoShoot());
  });

  test('a reader’s sentence stands where the file was opened; a worker that broke says so', async () => {
    const { ground, ran } = heldGround();
    const { shoot } = await open({ ground });
    choose('elevation-files', hgt);
    await vi.waitFor(() => expect(ran).toHaveLength(1));
    ran[0]?.settle(ok(fail('N45E013.hgt: expected 1201 × 1201 heights, found 7 bytes.')));
    await expectFigure('terrain-fault', 'expected 1201 × 1201 heights, found 7 bytes');
    choose('elevation-files', hgt);
    await vi.waitFor(() => expect(ran).toHaveLength(2));
    ran[1]?.settle(fail({ kind: 'failed', message: 'out of memory' }));
    await expectFigure('terrain-fault', 'could not be worked out: out of memory');
    expect(await shoot()).toEqual(demoShoot());
  });
});

describe('the phone', () => {
  test('is asked for permission within the press where the platform wants it; refused, it says what to do', async () => {
    const ask = vi.fn<() => Promise<PermissionState>>(() => Promise.resolve('denied'));
    const asking = DeviceOrientationEvent as unknown as { requestPermission?: typeof ask };
    asking.requestPermission = ask;
    try {
      await open({});
      await startSensor();
      expect(ask).toHaveBeenCalledOnce();
      await expectFigure('no-sensor', 'was not allowed. Allow motion and orientation');
    } finally {
      delete asking.requestPermission;
    }
  });

  test('on a page that came over no secure connection it says so at once', async () => {
    await open({});
    vi.spyOn(window, 'isSecureContext', 'get').mockReturnValue(false);
    await startSensor();
    await expectFigure('no-sensor', 'did not come over a secure connection');
  });

  test('readings that count from north push out those that do not', async () => {
    await open({});
    await startSensor();
    await vi.waitFor(() => expect(find('[data-start-sensor]').textContent).toContain('Waiting'));
    sendOrientation('deviceorientation', null, false);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(document.querySelector('[data-figure="phone-sight"]')).toBeNull();
    sendOrientation('deviceorientation', 100, false);
    await expectFigure('phone-north', 'set its north first');
    // The top edge at alpha 45 points to 315°; Trieste’s declination in 2027 is some 4.6° east (WMM 2025).
    sendOrientation('deviceorientationabsolute', 45, true);
    await expectFigure('phone-sight', /^320° NW, 5\.0° high/);
    sendOrientation('deviceorientation', 100, false);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(figure('phone-sight')).toMatch(/^320°/);
    find('[data-set-north-by-sun]').click();
    // The sun over Trieste at 12:00 UTC on 1 May stands past south.
    await expectFigure('phone-sight', /^2\d\d° (SSW|SW)/);
  });
});

describe('one of the spot’s photos', () => {
  const photo: Photo = {
    order: 'm',
    name: 'north mole',
    contentHash: 'a'.repeat(64),
    widthPx: 120,
    heightPx: 80,
    takenAtMs: null,
    latitudeDeg: null,
    longitudeDeg: null,
    bearingDeg: null,
    focalLengthMm: null,
    focalLength35Mm: 28,
    fNumber: null,
    shutterS: null,
    iso: null,
    note: '',
  };
  const withPhoto = (contentHash: string): Shoot => {
    const shoot = demoShoot();
    const pier = shoot.spots['pier'];
    if (pier !== undefined) pier.photos = { one: { ...photo, contentHash } };
    return shoot;
  };
  test('opens from the device’s own store', async () => {
    const repository = memoryRepository();
    const canvas = new OffscreenCanvas(120, 80);
    canvas.getContext('2d')?.fillRect(0, 40, 120, 40);
    const bytes = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer());
    const kept = await repository.keepBlob(bytes, 'image/png');
    await open({ repository }, withPhoto(kept.ok ? kept.value : ''));
    await openKeptPhoto();
    await vi.waitFor(() =>
      expect(find('[data-photo-stage]').ariaLabel).toBe('Marks on north mole'),
    );
  });

  test('that is not on this device is said to be missing', async () => {
    await open({}, withPhoto('b'.repeat(64)));
    await openKeptPhoto();
    await expectFigure('photo-fault', 'The picture of north mole is not on this device');
  });
});
