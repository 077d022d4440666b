import { describe, expect, test } from 'vitest';

import {
  contentsThatGoAlong,
  lookAtShootFile,
  shootFileText,
  takeShoot,
} from '../../../src/app/state/shoot-files.ts';
import { demoKit } from '../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../src/core/plan/demo-shoot.ts';
import { together } from '../../../src/core/plan/edits.ts';
import { applyEdit } from '../../../src/core/plan/history.ts';
import { addPhoto } from '../../../src/core/plan/photo-edits.ts';
import type { Shoot } from '../../../src/core/plan/shoot.ts';
import type { Result } from '../../../src/core/units/result.ts';
import { memoryRepository } from '../../../src/storage/memory-repository.ts';
import type { ShootRepository } from '../../../src/storage/shoot-repository.ts';
import { plainPhoto } from '../../support/plain-photo.ts';

const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 9, 8, 7]);

const valueOf = <Value>(result: Result<Value, unknown>): Value => {
  if (!result.ok) throw new Error(JSON.stringify(result.problem));
  return result.value;
};

/** A shoot with one photo, taken at a known place, on a device of its own. */
const onOneDevice = async (): Promise<{
  readonly repository: ShootRepository;
  readonly shoot: Shoot;
  readonly hash: string;
}> => {
  const repository = memoryRepository();
  const hash = valueOf(await repository.keepBlob(JPEG, 'image/jpeg'));
  const place = { latitudeDeg: 45.123456, longitudeDeg: 13.654321 };
  const shoot = applyEdit(
    demoShoot(),
    addPhoto('pier', 'p', { ...plainPhoto, ...place, contentHash: hash }),
  ).document;
  return { repository, shoot, hash };
};

const leaving = (
  { repository, shoot }: { readonly repository: ShootRepository; readonly shoot: Shoot },
  leftOut: ReturnType<typeof contentsThatGoAlong>,
): ReturnType<typeof shootFileText> =>
  shootFileText({ repository, shoot, kit: demoKit(), leftOut, exportedAtMs: 0 });

const arriving = async (
  text: string,
): Promise<{ readonly there: ShootRepository; readonly shoot: Shoot }> => {
  const there = memoryRepository();
  const plan = valueOf(
    await lookAtShootFile(new File([text], 'shoot.json'), {
      repository: there,
      kit: demoKit(),
      newId: 'n',
    }),
  );
  valueOf(await takeShoot(plan, there));
  return { there, shoot: valueOf(await there.read('shoot', 'demo')) };
};

describe('a shoot with photos goes from one device to another', () => {
  test('with its pictures, and without the places of photos unless they are asked for', async () => {
    const device = await onOneDevice();
    const contents = contentsThatGoAlong(device.shoot);
    const text = valueOf(
      await leaving(
        device,
        contents.filter(({ onlyIfAsked }) => onlyIfAsked),
      ),
    );
    expect(text).not.toContain('45.123456');
    const { there, shoot } = await arriving(text);
    expect(valueOf(await there.blob(device.hash))?.bytes).toEqual(JPEG);
    expect(shoot.spots['pier']?.photos['p']).toMatchObject({
      contentHash: device.hash,
      latitudeDeg: null,
      longitudeDeg: null,
    });
  });

  test('asked for, the places go along', async () => {
    const device = await onOneDevice();
    const { shoot } = await arriving(valueOf(await leaving(device, [])));
    expect(shoot).toEqual(device.shoot);
  });

  test('a photo left out leaves nothing of itself behind', async () => {
    const device = await onOneDevice();
    const leftOut = contentsThatGoAlong(device.shoot).filter(({ field }) => field === 'photos.p');
    const text = valueOf(await leaving(device, leftOut));
    for (const trace of [
      device.hash,
      plainPhoto.name,
      '45.123456',
      btoa('\xff\xd8\xff').slice(0, 4),
    ])
      expect(text).not.toContain(trace);
    const { shoot } = await arriving(text);
    expect(shoot).toEqual(demoShoot());
  });

  test('a picture that is not on this device stays behind, and the shoot leaves', async () => {
    const device = await onOneDevice();
    const { there, shoot } = await arriving(
      valueOf(await leaving({ ...device, repository: memoryRepository() }, [])),
    );
    expect(shoot).toEqual(device.shoot);
    expect(valueOf(await there.blob(device.hash))).toBeNull();
  });

  test('a device without room for the pictures creates no shoot', async () => {
    const device = await onOneDevice();
    const text = valueOf(await leaving(device, []));
    const sentence = 'The browser has no room left.';
    const full: ShootRepository = {
      ...memoryRepository(),
      keepBlob: async () => ({ ok: false, problem: { kind: 'storage', sentence } }),
    };
    const plan = valueOf(
      await lookAtShootFile(new File([text], 'shoot.json'), {
        repository: full,
        kit: demoKit(),
        newId: 'n',
      }),
    );
    expect(await takeShoot(plan, full)).toEqual({ ok: false, problem: sentence });
    expect(valueOf(await full.listShoots())).toEqual([]);
  });

  test('more photos than can be read back are refused before they are written', async () => {
    const repository = memoryRepository();
    const hashes: string[] = [];
    for (let at = 0; at < 24; at += 1)
      hashes.push(
        valueOf(await repository.keepBlob(new Uint8Array(1_900_000).fill(at), 'image/jpeg')),
      );
    const shoot = applyEdit(
      demoShoot(),
      together(
        ...hashes.map((contentHash, at) =>
          addPhoto('pier', `p${at}`, { ...plainPhoto, contentHash }),
        ),
      ),
    ).document;
    // 24 × 1.9 MB × 4/3 of base64 is 60.8 MB.
    expect(await leaving({ repository, shoot }, [])).toEqual({
      ok: false,
      problem:
        'The file would take 61 MB, and 60 MB is the most that can be read back. Leave out some photos or outlines.',
    });
  });
});
