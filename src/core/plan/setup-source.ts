import type { BeamShape } from '../strobe/beam.ts';
import { ASSUMED_BEAM_DEG, offAxisStops } from '../strobe/beam.ts';
import { BOUNCE_SPREAD_STOPS, type Bounce } from '../strobe/bounce.ts';
import { bouncedPath, type LightPath } from '../strobe/light-path.ts';
import type { Row } from './face-places.ts';
import type { Gel, Head, Kit, Modifier, Stand } from './kit.ts';
import { headWithModifier, type ModifiedHead, type ModifierSetting } from './modified-head.ts';
import { faceSpread, type Aim, type FaceSpread, type LightStand } from './row-of-faces.ts';
import type { Light } from './setup-schema.ts';

/** One light of a setup with the kit it is made of. */
export type SetupSource = {
  readonly lightId: string;
  readonly light: Light;
  readonly head: Head;
  readonly modifier: Modifier;
  readonly gel: Gel | null;
  /** On top of the first. */
  readonly secondGel: Gel | null;
  /** The chosen row of the modifier's own table. */
  readonly setting: ModifierSetting | null;
  /** What it stands on; null: held in the hand, or not in the kit. */
  readonly carrier: Stand | null;
  /** At the middle face, with all that gels, feathering and bounce cost. */
  readonly output: ModifiedHead;
  /** How its light comes to the subject when not straight along its axis. */
  readonly path: LightPath | null;
  /** What the bounce gives; null where it is aimed straight. */
  readonly bounce: Bounce | null;
  /** Nobody has stated the modifier's beam, and something hangs on it: a standard reflector's is taken. */
  readonly beamIsAssumed: boolean;
  readonly stand: LightStand;
  readonly faces: FaceSpread;
};

type Made = Pick<SetupSource, 'lightId' | 'light' | 'head' | 'modifier' | 'gel' | 'secondGel'>;

export function setupSource(made: Made, kit: Kit, row: Row): SetupSource {
  const { light, modifier } = made;
  const setting =
    light.modifierSettingId === null ? null : (modifier.settings[light.modifierSettingId] ?? null);
  const straight = headWithModifier({ ...made, modifierId: light.modifierId, setting });
  const beam = beamOf(light, modifier, setting);
  const sent = sentOn(light, straight, beam);
  const stand = {
    distanceM: light.distanceM,
    angleDeg: light.angleDeg,
    heightM: light.heightM,
    sourceRadiusM: sent.output.sourceDiameterM / 2,
    aim: sent.aim,
  };
  return {
    ...made,
    setting,
    carrier: light.standId === null ? null : (kit.stands[light.standId] ?? null),
    output: sent.output,
    path: sent.path,
    bounce: sent.bounce,
    beamIsAssumed:
      beam.isAssumed && (light.bounce !== null || (light.featherDeg > 0 && beam.coreDeg !== null)),
    stand,
    faces: faceSpread(stand, row),
  };
}

type Beam = BeamShape & { readonly beamDeg: number; readonly isAssumed: boolean };

/** A setting's beam before the grid's before the modifier's. */
function beamOf(
  light: Pick<Light, 'diffuser' | 'grid'>,
  modifier: Modifier,
  setting: ModifierSetting | null,
): Beam {
  const diffuse = light.diffuser && modifier.diffuserStops !== null;
  const gridded = light.grid && modifier.gridStops !== null;
  const stated = setting?.beamDeg ?? (gridded ? modifier.gridBeamDeg : modifier.beamDeg);
  const beamDeg = stated ?? ASSUMED_BEAM_DEG;
  // A diffuser makes its own beam; only what stands before it narrows that.
  const shapedByFace = diffuse && !gridded && setting === null;
  return {
    diffuse,
    coreDeg: shapedByFace ? null : beamDeg,
    beamDeg,
    isAssumed: stated === null,
  };
}

type Sent = Pick<SetupSource, 'output' | 'path' | 'bounce'> & { readonly aim: Aim };

/** A wall, a panel, the pavement: it sends by Lambert's law whatever lit it. */
const MATT: BeamShape = { diffuse: true, coreDeg: null };
/** How well a loss off the axis is known, as a share of it, common practice. [lightingPractice] */
const FEATHER_SPREAD_SHARE = 0.3;

function sentOn(light: Light, straight: ModifiedHead, beam: Beam): Sent {
  const shape = { diffuse: beam.diffuse, coreDeg: beam.coreDeg };
  if (light.bounce !== null) {
    const { panelSideM, ...off } = light.bounce;
    const found = bouncedPath({
      headToSurfaceM: off.headToSurfaceM,
      surfaceToSubjectM: light.distanceM,
      incidenceDeg: off.incidenceDeg,
      exitDeg: off.exitDeg,
      beamDeg: Math.min(WIDEST_BEAM_DEG, beam.beamDeg),
      reflectance: off.reflectance,
      panelSideM: panelSideM ?? undefined,
    });
    return {
      path: found.path,
      bounce: found.bounce,
      aim: { offAxisDeg: off.exitDeg, beam: MATT },
      output: {
        ...straight,
        lossStops: straight.lossStops + found.path.lossStops,
        sourceDiameterM: found.sourceDiameterM,
        spreadStops: Math.hypot(straight.spreadStops, BOUNCE_SPREAD_STOPS),
      },
    };
  }
  const aim = { offAxisDeg: light.featherDeg, beam: shape };
  if (light.featherDeg === 0) return { path: null, bounce: null, aim, output: straight };
  const lossStops = -offAxisStops(shape, light.featherDeg) + 0;
  return {
    path: { kind: 'feathered', ...aim, lossStops },
    bounce: null,
    aim,
    output: {
      ...straight,
      lossStops: straight.lossStops + lossStops,
      spreadStops: Math.hypot(straight.spreadStops, FEATHER_SPREAD_SHARE * lossStops),
    },
  };
}

/** A bounce adds up rays inside a cone; past this they run along the surface. */
const WIDEST_BEAM_DEG = 170;
