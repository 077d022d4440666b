import { beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { Photos } from '../../../../../src/app/screens/scout/photos/Photos.tsx';
import { DocumentsProvider, useShoot } from '../../../../../src/app/state/documents.tsx';
import { ServicesContext, type Services } from '../../../../../src/app/state/services.ts';
import { useView } from '../../../../../src/app/state/view.ts';
import { demoKit } from '../../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../../src/core/plan/demo-shoot.ts';
import type { Spot } from '../../../../../src/core/plan/shoot.ts';
import { memoryRepository } from '../../../../../src/storage/memory-repository.ts';
import {
  ascii,
  fileOf,
  heicWith,
  jpegWithInFront,
  rational,
  short,
  type Directory,
} from '../../../../support/exif-file.ts';
import { defined } from '../../../../support/defined.ts';
import '../../../../../src/app/shell/theme.css';
import '../../../../../src/app/ui/ui.css';

const PIER = 'pier';

let services: Services;
let ids = 0;

const OnPier = () => <Photos spotId={PIER} spot={defined(useShoot().spots[PIER])} />;

const spot = async (): Promise<Spot> => {
  const read = await services.repository.read('shoot', 'demo');
  if (!read.ok) throw new Error(read.problem.kind);
  return defined(read.value.spots[PIER]);
};

beforeEach(async () => {
  await page.viewport(480, 900);
  const repository = memoryRepository();
  await repository.create('kit', demoKit());
  await repository.create('shoot', demoShoot());
  useView.setState({ spotId: PIER, setupId: null, minuteMs: null, said: '' });
  services = {
    repository,
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
    authorId: 'ann',
  } as unknown as Services;
  await render(
    <ServicesContext value={services}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <OnPier />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await vi.waitFor(() => find('[data-add-photos]'));
});

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const figure = (name: string): string => find(`[data-figure="${name}"]`).textContent?.trim() ?? '';
const count = (selector: string): number => document.querySelectorAll(selector).length;
const add = (...files: readonly File[]): Promise<void> =>
  userEvent.upload(find('[data-add-photos]'), [...files]);
const added = (photos: number): Promise<void> =>
  vi.waitFor(() => expect(count('[data-photo]')).toBe(photos));
const undo = async (): Promise<void> => {
  const stamp = { entryId: `undo-${(ids += 1)}`, authorId: 'ann', atMs: 0 };
  await services.repository.undo({ documents: [{ kind: 'shoot', id: 'demo' }], stamp });
};

const jpeg = async (
  colour: string,
  exif: Directory = {},
  gps: Directory = {},
): Promise<Uint8Array<ArrayBuffer>> => {
  const canvas = new OffscreenCanvas(2400, 1600);
  const context = defined(canvas.getContext('2d') ?? undefined);
  context.fillStyle = colour;
  context.fillRect(0, 0, 2400, 1600);
  const blob = await canvas.convertToBlob({ type: 'image/jpeg' });
  const drawn = new Uint8Array(await blob.arrayBuffer());
  return jpegWithInFront(drawn, { exif, gps: { ...PLACE, ...gps } });
};

/** 45° 39′ 00″ N, 13° 45′ 00″ E, looking 300° from true north. */
const PLACE: Directory = {
  1: ascii('N'),
  2: rational([45, 1], [39, 1], [0, 1]),
  3: ascii('E'),
  4: rational([13, 1], [45, 1], [0, 1]),
  16: ascii('T'),
  17: rational([300, 1]),
};

const EXPOSED: Directory = {
  0x829a: rational([1, 256]),
  0x829d: rational([8, 1]),
  0x8827: short(100),
  0x9003: ascii('2027:05:14 19:30:05'),
  0x920a: rational([57, 10]),
  0xa405: short(26),
};

describe('the photos of a spot', () => {
  test('a photo added shows its picture, time on the spot’s clocks, direction, settings and reading', async () => {
    await add(fileOf(await jpeg('#246', EXPOSED), 'one.jpg'));
    await added(1);
    expect(figure('photo-name')).toBe('one.jpg');
    // The demo's pier is in Europe/Rome and the file has no offset: its clock showed 19:30 there.
    expect(figure('photo-taken')).toBe('Fri 14 May 2027, 19:30');
    expect(figure('photo-where')).toMatch(/^looks 300° WNW, taken [\d.]+ k?m from the spot$/);
    expect(figure('photo-settings')).toBe('5.7 mm, as 26 mm on 36 × 24 · f/8 · 1/250 · ISO 100');
    // f/8 for 1/256 s at ISO 100 is EV 14: at 1/250 the aperture for it is f/8.
    expect(figure('photo-ev')).toBe('EV 14.0 = f/8 at 1/250, ISO 100, if the meter had it right');
    const image = await vi.waitFor(() => find('[data-photo] img') as HTMLImageElement);
    await vi.waitFor(() => expect(image.naturalWidth).toBe(1600));
    expect(useView.getState().said).toBe('Added 1 photo to Pier head.');
    const { photos, readings } = await spot();
    const [photoId, photo] = defined(Object.entries(photos)[0]);
    expect(photo).toMatchObject({ latitudeDeg: 45.65, longitudeDeg: 13.75, bearingDeg: 300 });
    expect(Object.values(readings)).toMatchObject([{ ev100: 14, photoId, from: 'photo' }]);
  });

  test('several at once are one step to undo, and one that stands here already is not added again', async () => {
    const one = fileOf(await jpeg('#246', EXPOSED), 'one.jpg');
    const two = fileOf(await jpeg('#642'), 'two.jpg');
    await add(one, two);
    await added(2);
    await add(one);
    await vi.waitFor(() =>
      expect(useView.getState().said).toBe(
        'Added 0 photos to Pier head. 1 photo stood here already.',
      ),
    );
    expect(count('[data-photo]')).toBe(2);
    await undo();
    await added(0);
    expect((await spot()).readings).toEqual({});
  });

  test('a file that is no photo is named and stops none of the others', async () => {
    const script = new File(['<script>document.title = "run"</script>'], 'page.jpg', {
      type: 'image/jpeg',
    });
    await add(script, fileOf(await jpeg('#246'), 'one.jpg'));
    await added(1);
    expect(find('[data-note="photos-said"]').textContent).toBe(
      'page.jpg: expected a photo (JPEG, HEIC, WebP, PNG or TIFF), found a text.',
    );
    expect(document.title).not.toBe('run');
  });

  test('a photo this browser cannot show is kept with what its camera wrote, and says so', async () => {
    await add(fileOf(heicWith({ exif: EXPOSED, gps: PLACE }), 'one.heic', 'image/heic'));
    await added(1);
    expect(find('[data-note="no-picture"]').textContent).toBe('Kept without its picture');
    expect(figure('photo-ev')).toMatch(/^EV 14\.0/);
    expect(find('[data-note="photos-said"]').textContent).toBe(
      'one.heic: this browser shows no HEIC pictures; kept without its picture.',
    );
  });

  test('a photo with flash makes no reading until it is told to', async () => {
    await add(fileOf(await jpeg('#246', { ...EXPOSED, 0x9209: short(1) }), 'one.jpg'));
    await added(1);
    expect((await spot()).readings).toEqual({});
    await userEvent.click(find('[data-take-reading]'));
    await vi.waitFor(() => find('[data-drop-reading]'));
    expect(Object.values((await spot()).readings)).toMatchObject([{ ev100: 14 }]);
    await userEvent.click(find('[data-drop-reading]'));
    await vi.waitFor(() => find('[data-take-reading]'));
    expect((await spot()).readings).toEqual({});
  });

  test('its direction and focal length become the framing’s', async () => {
    await add(fileOf(await jpeg('#246', EXPOSED), 'one.jpg'));
    await added(1);
    const button = find('[data-photo-framing]');
    expect(button.textContent).toBe('Use its direction and focal length for the framing');
    await userEvent.click(button);
    const { sensorWidthMm, sensorHeightMm } = (await spot()).framing;
    const crop = Math.hypot(sensorWidthMm, sensorHeightMm) / Math.hypot(36, 24);
    await vi.waitFor(async () =>
      expect((await spot()).framing.focalLengthMm).toBeCloseTo(26 * crop, 1),
    );
    const { framing } = await spot();
    expect(framing.bearingDeg).toBe(300);
    expect(framing.orientation).toBe('landscape');
  });

  test('a direction by the compass is turned by the declination of the place and date, and noted', async () => {
    await add(fileOf(await jpeg('#246', EXPOSED, { 16: ascii('M') }), 'one.jpg'));
    await added(1);
    const { photos } = await spot();
    const photo = defined(Object.values(photos)[0]);
    // About 5° east on the northern Adriatic in these years: from memory of printed charts.
    expect(photo.bearingDeg).toBeGreaterThan(303.5);
    expect(photo.bearingDeg).toBeLessThan(306.5);
    expect(photo.note).toMatch(
      /^Direction by the compass 300° from magnetic north, turned by \+[456]\.\d° to true north\.$/,
    );
  });

  test('a note is kept; a photo removed goes with its reading and comes back with it', async () => {
    await add(fileOf(await jpeg('#246', EXPOSED), 'one.jpg'));
    await added(1);
    await userEvent.fill(find('[data-field="photo-note"]'), '<b>low tide</b>');
    await userEvent.tab();
    await vi.waitFor(async () =>
      expect(Object.values((await spot()).photos)[0]?.note).toBe('<b>low tide</b>'),
    );
    await userEvent.click(find('[data-remove-photo]'));
    await added(0);
    expect((await spot()).readings).toEqual({});
    await undo();
    await added(1);
    expect(Object.keys((await spot()).readings)).toHaveLength(1);
    await vi.waitFor(() => find('[data-photo] img'));
  });
});
