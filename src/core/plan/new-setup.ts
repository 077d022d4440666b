import { fail, ok, type Result } from '../units/result.ts';
import type { Kit } from './kit.ts';
import { newLight } from './new-light.ts';
import { inOrder, orderKeyAtEnd, orderKeyBetween } from './order-key.ts';
import { SETUP_DEFAULTS } from './setup-defaults.ts';
import type { Setup } from './setup-schema.ts';
import type { Shoot } from './shoot.ts';

type Wanted = Pick<Setup, 'name' | 'spotId' | 'startClock'> & {
  /** Of the key it starts with, where the kit has a head and a modifier. */
  readonly lightId: string;
};

/**
 * A setup to start from at a spot: the kit's first camera, the first lens that has the spot's focal
 * length, one key from the first head. The problem is a sentence for the user.
 */
export function newSetup(shoot: Shoot, kit: Kit, wanted: Wanted): Result<Setup, string> {
  const { name, spotId, startClock, lightId } = wanted;
  const camera = inOrder(kit.cameras)[0];
  const lens = lensFor(kit, shoot.spots[spotId]?.framing.focalLengthMm);
  if (camera === undefined || lens === undefined)
    return fail('A setup needs a camera and a lens; the kit has none yet. Add them in Kit.');
  const key = newLight(kit, {}, 'key');
  return ok({
    ...SETUP_DEFAULTS,
    order: orderKeyAtEnd(shoot.setups),
    name: name.slice(0, 120),
    spotId,
    startClock,
    durationMin: 45,
    cameraId: camera[0],
    lensId: lens[0],
    wishFNumber: Math.max(SETUP_DEFAULTS.wishFNumber, lens[1].minFNumber),
    lights: key === null ? {} : { [lightId]: key },
  });
}

function lensFor(
  kit: Kit,
  focalLengthMm: number | undefined,
): readonly [id: string, lens: Kit['lenses'][string]] | undefined {
  const lenses = inOrder(kit.lenses);
  const fits = lenses.find(
    ([, lens]) =>
      focalLengthMm !== undefined &&
      lens.minFocalLengthMm <= focalLengthMm &&
      lens.maxFocalLengthMm >= focalLengthMm,
  );
  return fits ?? lenses[0];
}

/** A copy that stands right after its original. */
export function copyOf(shoot: Shoot, setupId: string): Setup | null {
  const setups = inOrder(shoot.setups);
  const place = setups.findIndex(([id]) => id === setupId);
  const setup = setups[place]?.[1];
  if (setup === undefined) return null;
  const after = setups.slice(place + 1).find(([, { order }]) => order > setup.order);
  return {
    ...setup,
    name: `${setup.name.slice(0, 110)}, copy`,
    order: orderKeyBetween(setup.order, after?.[1].order ?? ''),
  };
}
