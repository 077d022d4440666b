import { SKY_CONDITION_TRAITS } from '../../../core/daylight/sky-condition.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import { poleInFrame } from '../../../core/plan/light-in-frame.ts';
import { projectedFraming } from '../../../core/plan/picture-geometry.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { projection } from '../../../core/sky/framing.ts';
import { angleBetweenDeg } from '../../../core/units/direction.ts';
import { isTooUneven, sideSpreads } from '../../../core/plan/side-spread.ts';
import { tenths } from '../../ui/figure-text.ts';
import { ROLE_NAMES } from '../../ui/recipe-text.ts';
import { spreadOfFacesText } from './light-words.ts';

/** Colour gels cost less; what takes more is as good as black. */
const DENSE_GELS_STOPS = 6;

export type Note = { readonly id: string; readonly text: string };

/** True altitudes between which the sky takes the twilight shape, wholly or in part. */
const TWILIGHT_SHAPE_BELOW_DEG = 4;

/** What has to be known about a setup at this minute beside its figures. */
export function notesOf(view: SetupView, kit: Kit): readonly Note[] {
  return [...skyNotes(view), ...lightNotes(view), ...kitNotes(view, kit)];
}

function skyNotes(view: SetupView): readonly Note[] {
  const { light, scene, setup } = view;
  const notes: Note[] = [];
  if (light.skyInFrame?.sunInFrame === true)
    notes.push({
      id: 'sun-in-frame',
      text: 'The sun stands in the frame and clips at any hold; flare and veil are not modelled. Never look at it through an optical finder or a long lens; ND and polarisers do not protect eyes.',
    });
  if (isNearSun(view))
    notes.push({
      id: 'near-sun',
      text: 'Within 5° of the sun the sky is brighter than shown.',
    });
  if (light.skyInFrame?.patchIsFrame === true && setup.holdUnder === 'patch')
    notes.push({
      id: 'no-patch',
      text: 'No patch of this frame is half sky; the hold counts from the whole sky in it.',
    });
  if (
    SKY_CONDITION_TRAITS[scene.condition].takesTwilightShape &&
    light.sun.trueAltitudeDeg < TWILIGHT_SHAPE_BELOW_DEG
  )
    notes.push({
      id: 'twilight',
      text: 'The shape of the sky around sunset and after is an approximation.',
    });
  if (scene.condition === 'heavy-overcast')
    notes.push({
      id: 'overcast-type',
      text: 'Another standard sky for heavy overcast would put the low sky 0.5 to 0.7 stop darker; the ± covers it.',
    });
  return notes;
}

/** Whether any direction in the picture lies within 5° of the sun. */
function isNearSun({ light, framing }: SetupView): boolean {
  const { azimuthDeg, apparentAltitudeDeg } = light.sun;
  if (apparentAltitudeDeg < -0.3) return false;
  const sun = { azimuthDeg, altitudeDeg: apparentAltitudeDeg };
  const { toPicture, toDirection } = projection(projectedFraming(framing));
  const point = toPicture(sun);
  if (point === null) return false;
  const nearest = toDirection({
    xFraction: inside(point.xFraction),
    yFraction: inside(point.yFraction),
  });
  return angleBetweenDeg(sun, nearest) <= 5;
}

const inside = (fraction: number): number => Math.min(0.5, Math.max(-0.5, fraction));

function lightNotes(view: SetupView): readonly Note[] {
  const notes: Note[] = [];
  for (const { lightId, light, gel, secondGel, carrier, stand } of view.sources) {
    const name = ROLE_NAMES[light.role];
    const isInFrame = view.lightsInFrame.includes(lightId);
    const isOnPole = carrier !== null && light.bounce === null;
    if (!isInFrame && isOnPole && poleInFrame(stand, view.setup, view.framing))
      notes.push({
        id: `pole-in-frame-${lightId}`,
        text: `The stand of the ${name.toLowerCase()} is in the picture.`,
      });
    if (isInFrame)
      notes.push({
        id: `in-frame-${lightId}`,
        text:
          light.bounce === null
            ? `${name} stands in the picture.`
            : `The patch that the ${name.toLowerCase()} lights is in the picture.`,
      });
    const gelStops = (gel?.stops ?? 0) + (secondGel?.stops ?? 0);
    if (gelStops >= DENSE_GELS_STOPS)
      notes.push({
        id: `gels-${lightId}`,
        text: `${name}: the gels take ${tenths(gelStops)} stops together, hardly anything passes.`,
      });
  }
  for (const side of sideSpreads(view.sources, view.setup))
    if (isTooUneven(side, view.setup))
      notes.push({
        id: `spread-${side.lightIds[0]}`,
        text: `${ROLE_NAMES[side.role]}: ${spreadOfFacesText(side.faces)}, at most ${tenths(view.setup.spreadLimitStops)} wanted.`,
      });
  if (view.sources.some(({ output }) => output.origin === 'watt-seconds'))
    notes.push({
      id: 'watt-seconds',
      text: 'A figure from watt-seconds is a guess, about a stop either way; one metered shot replaces it.',
    });
  if (!view.answer.ok) return notes;
  const { recipe, ghostEdgeLikely } = view.answer.value;
  if (ghostEdgeLikely)
    notes.push({
      id: 'ghost',
      text: 'A ghost edge is likely: at this shutter ambient draws the moving subject a second time.',
    });
  if (recipe.highSpeedSync)
    notes.push({
      id: 'hss',
      text: `High-speed sync costs ${tenths(view.input.camera.hssLossStops ?? 2)} stops against ambient, the same at every shutter above sync speed${view.sources.every(({ head }) => head.hssMeasured) ? ', as measured' : '; assumed until measured, 1.5 to 2.3'}.`,
    });
  return notes;
}

function kitNotes({ setup, framing, sources }: SetupView, kit: Kit): readonly Note[] {
  const notes: Note[] = [];
  const lens = kit.lenses[setup.lensId];
  if (
    lens !== undefined &&
    (framing.focalLengthMm < lens.minFocalLengthMm || framing.focalLengthMm > lens.maxFocalLengthMm)
  )
    notes.push({
      id: 'focal-length',
      text: `The framing is for ${framing.focalLengthMm} mm; the lens chosen goes from ${lens.minFocalLengthMm} to ${lens.maxFocalLengthMm} mm.`,
    });
  for (const [headId, count] of counted(sources, ({ light }) => light.headId)) {
    const head = kit.heads[headId];
    if (head !== undefined && count > head.owned)
      notes.push({
        id: `heads-${headId}`,
        text: `The setup uses ${count} × ${head.name}; the kit holds ${head.owned}.`,
      });
  }
  for (const [standId, count] of counted(sources, ({ light }) => light.standId)) {
    const stand = kit.stands[standId];
    if (stand !== undefined && count > stand.owned)
      notes.push({
        id: `stands-${standId}`,
        text: `The setup stands on ${count} × ${stand.name}; the kit holds ${stand.owned}.`,
      });
  }
  return notes;
}

/** How many heads, and as many stands under them, each id is named for. */
function counted(
  sources: SetupView['sources'],
  idOf: (source: SetupView['sources'][number]) => string | null,
): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const source of sources) {
    const id = idOf(source);
    if (id !== null) used.set(id, (used.get(id) ?? 0) + source.light.headCount);
  }
  return used;
}

/** Said with every setup. */
export const CAUTIONS: readonly string[] = [
  'Weigh down every stand; a person on each large modifier; keep the way past free.',
  'No flash toward drivers, vessels or aircraft, and no bare head close to eyes. Ask about photosensitive epilepsy first.',
  'Heads hold a lethal charge: never open one, keep them away from rain and salt water.',
  'Nothing here says that a place or a stand is safe or permitted: local rules and licensed people come first.',
];
