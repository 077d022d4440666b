/** Where people get hurt. None of this makes a place, a stand or a shoot safe or permitted. */
export const CAUTIONS = [
  'Never look at the sun through an optical finder or a long lens, nor leave a lens pointed at it. ND filters and polarisers do not protect eyes.',
  'Every stand weighed down, the leg under the load, a person on each large modifier. Strike boxes and umbrellas when gusts come near your limit.',
  'Keep paths passable, someone watching. Choose another spot rather than work on a carriageway or on railway land.',
  'Water’s edge and wet stone: nobody steps back without a spotter.',
  'No flash toward drivers, vessels or aircraft. Ask about photosensitive epilepsy. No bare head close to eyes.',
  'Any thunder heard: leave at once, the stands stay; back 30 minutes after the last of it.',
  'Heads hold a lethal charge even when off: do not open them, keep them from rain and salt water.',
  'Heat and cold: shade, water, rest, dry clothes; no charging below freezing; batteries out of the hot car.',
  'Nobody alone after dark. Someone elsewhere knows the plan.',
  'Permission and local rules come first, and a licensed professional where the law asks for one.',
] as const;
