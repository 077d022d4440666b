import { formatShutter } from '../../../core/exposure/shutter-scale.ts';
import { formatNd } from '../../../core/exposure/lens-filter.ts';
import type { Kit } from '../../../core/plan/kit.ts';
import { faceSpread } from '../../../core/plan/row-of-faces.ts';
import { fixEdit, type SetupChange, type SetupFix } from '../../../core/plan/setup-fix.ts';
import type { SetupView } from '../../../core/plan/setup-view.ts';
import { bearingText, inHandText, metres, tenths } from '../../ui/figure-text.ts';

type Known = {
  readonly base: Pick<SetupView, 'setup' | 'sources' | 'answer'>;
  readonly kit: Kit;
  /** How far the faces differ after a move; absent: said with it. */
  readonly spread?: 'said beside it';
};

export type FixText = {
  /** 'Closer: key at 1.85 m (ends of the group differ by 0.9)' */
  readonly sentence: string;
  /** '0.0 in hand', a range where the gain is one. */
  readonly inHand: string;
  /** Why it cannot be used as it stands; null where it can. */
  readonly blocked: string | null;
};

export function fixText(fix: SetupFix, known: Known): FixText {
  const parts = fix.changes.map((change) => changeText(change, known));
  const sentence = parts
    .map((part, place) => (place === 0 ? part : `${part.charAt(0).toLowerCase()}${part.slice(1)}`))
    .join('; and ');
  const range = fix.inHandStops - fix.leastInHandStops > 0.05;
  return {
    sentence,
    inHand: range
      ? `${inHandText(fix.leastInHandStops)} to ${inHandText(fix.inHandStops)}`
      : inHandText(fix.inHandStops),
    blocked: fixEdit('any', fix) === null ? blockedText(fix) : notOwnedText(fix),
  };
}

/** Kinds of its changes, for a pair both. */
export const fixKind = (fix: SetupFix): string => fix.changes.map(({ kind }) => kind).join('+');

function blockedText(fix: SetupFix): string {
  for (const change of fix.changes) {
    if (change.kind === 'sync-shutter')
      return 'No camera or leaf-shutter lens in the kit syncs so fast.';
    if (change.kind === 'nd') return 'This ND is not in the kit.';
    if (change.kind === 'head-nd')
      return 'Put it on the head and meter: the plan has no place for it yet.';
    if (change.kind === 'polariser')
      return 'How much it takes shows only through the finder: put it on and look.';
  }
  return 'Not in the kit.';
}

const notOwnedText = (fix: SetupFix): string | null =>
  fix.changes.some(
    (change) => (change.kind === 'heads' || change.kind === 'mirror') && !change.owned,
  )
    ? 'The kit does not hold so many of this head.'
    : null;

function changeText(change: SetupChange, { base, kit, spread }: Known): string {
  const rolesOf = (ids: readonly string[]): string =>
    ids.map((id) => base.setup.lights[id]?.role ?? 'the second').join(' and ');
  switch (change.kind) {
    case 'distance':
      return `${change.closer ? 'Closer' : 'Farther'}: ${rolesOf(change.lightIds)} at ${metres(change.distanceM)}${spread === undefined ? endsText(change, base) : ''}`;
    case 'part-off':
      return `Take the ${change.part} off the ${rolesOf([change.lightId])}`;
    case 'part-on':
      return `Put the ${change.part} on the ${rolesOf([change.lightId])}`;
    case 'modifier':
      return `Harder modifier: ${kit.modifiers[change.modifierId]?.name ?? 'another'} on the ${rolesOf([change.lightId])}`;
    case 'heads':
      return `${change.headCount === 2 ? 'Second head' : 'More heads'}: ${change.headCount} equal heads as ${rolesOf([change.lightId])}`;
    case 'mirror':
      return `Second head: an equal light from the other side as ${rolesOf([change.lightId])}; it takes some of the shape out of the faces`;
    case 'height':
      return `Higher: ${rolesOf([change.lightId])} at ${metres(change.heightM)} where it stands, ${metres(change.distanceM)} from the middle face`;
    case 'feather':
      return `${change.more ? 'Feathered' : 'Feathered less'}: ${rolesOf([change.lightId])} turned ${change.featherDeg}° off the middle face, towards the far end`;
    case 'aim':
      return `Aim the ${rolesOf([change.lightId])} straight instead of bouncing it`;
    case 'stand':
      return `${change.standId === null ? 'Held in the hand' : (kit.stands[change.standId]?.name ?? 'Another stand')}: ${kit.modifiers[change.modifierId]?.name ?? 'another modifier'} on the ${rolesOf([change.lightId])}`;
    case 'leave-out':
      return `Leave out the ${rolesOf(change.lightIds)}`;
    case 'camera':
      return `Faster sync: ${kit.cameras[change.cameraId]?.name ?? 'another camera'}, ${formatShutter(change.syncShutterS)}`;
    case 'lens':
      return `Leaf shutter: ${kit.lenses[change.lensId]?.name ?? 'another lens'}, ${formatShutter(change.syncShutterS)}`;
    case 'sync-shutter':
      return `Faster sync: a camera or leaf shutter that syncs at ${formatShutter(change.shutterS)}`;
    case 'clock':
      return `${change.later ? 'Later' : 'Earlier'}: ${isReach(base) ? 'in reach' : 'it works'} ${change.later ? 'from' : 'until'} ${change.clock}`;
    case 'hold':
      return `${change.deeper ? 'Deeper' : 'Less'}: hold ${tenths(change.holdStops)} under instead of ${tenths(base.setup.holdStops)}`;
    case 'unlit-under':
      return `Flatter: let the unlit face lie ${tenths(change.unlitUnderStops)} under instead of ${tenths(base.setup.unlitUnderStops)}`;
    case 'shade':
      return 'Shade: a panel between sun and subject';
    case 'tripod':
      return 'Tripod: a slower shutter is allowed';
    case 'bearing':
      return change.sunBehind
        ? `Turn to ${bearingText(change.bearingDeg)}, the sun hidden behind the subject`
        : `Turn to ${bearingText(change.bearingDeg)}`;
    case 'tilt':
      return `Tilt up to ${change.tiltDeg > 0 ? '+' : '−'}${Math.abs(change.tiltDeg)}°`;
    case 'focal-length':
      return `Longer lens: ${change.focalLengthMm} mm from ${metres(change.cameraDistanceM)}`;
    case 'polariser':
      return `Polariser: darkens this sky by 0 to ${tenths(change.upToStops)} more than it takes from the flash`;
    case 'nd':
      return `More ND: ${formatNd(change.stops)} beside what the kit holds`;
    case 'head-nd':
      return `ND gel, ${tenths(change.stops)} stops, on the ${rolesOf(change.lightIds)}`;
    case 'unpin':
      return unpinText(change, rolesOf(change.lightIds));
  }
}

const isReach = ({ answer }: Known['base']): boolean =>
  !answer.ok && answer.problem.kind === 'sky-above-reach';

function unpinText(change: Extract<SetupChange, { kind: 'unpin' }>, roles: string): string {
  const what = {
    shutter: 'the shutter',
    aperture: 'the aperture',
    iso: 'ISO',
    filters: 'the filters',
    power: `the power of the ${roles}`,
  }[change.pin];
  return `Unpin ${what}: the pin costs ${tenths(change.costsStops)}`;
}

function endsText(change: Extract<SetupChange, { kind: 'distance' }>, base: Known['base']): string {
  const moved = base.sources.find(({ lightId }) => lightId === change.lightIds[0]);
  if (moved === undefined || base.setup.people < 2) return '';
  const { spreadStops } = faceSpread({ ...moved.stand, distanceM: change.distanceM }, base.setup);
  return ` (ends of the group differ by ${tenths(spreadStops)})`;
}
