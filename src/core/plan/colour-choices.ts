import { produce } from 'immer';

import { colourPairs } from '../colour/colour-pairs.ts';
import { kelvinFromMired, miredFromKelvin } from '../colour/mired.ts';
import { shiftOfAll, throughFilter, type ColourShift } from '../colour/filtered-light.ts';
import { neutralSetting, seenLight, type SeenLight } from '../colour/seen-light.ts';
import type { WhiteBalance } from '../colour/white-balance.ts';
import { whiteOfKelvin } from '../colour/daylight-locus.ts';
import type { Chromaticity } from '../colour/chromaticity.ts';
import { judgeRecipe } from '../strobe/judge-recipe.ts';
import { editLight, editSetup, together, type Edit } from './edits.ts';
import { colourOfAmbient } from './frame-lights.ts';
import type { Filter, Gel, Kit } from './kit.ts';
import { filtersNow, stackShift } from './lens-stack.ts';
import { inOrder } from './order-key.ts';
import { seenLights, whiteBalanceOf } from './seen-lights.ts';
import { setupCase, type SetupCaseInput } from './setup-case.ts';
import type { SetupView } from './setup-view.ts';
import type { Shoot } from './shoot.ts';

/** Gels, a white balance and perhaps a filter that leave the skin as it should be. */
export type ColourChoice = {
  /** At most two, as they are taped on. */
  readonly gelIds: readonly string[];
  /** A colour filter that goes on the lens with them; null: none. */
  readonly filterId: string | null;
  readonly whiteBalance: WhiteBalance;
  readonly gelStops: number;
  readonly skin: SeenLight;
  readonly ambient: SeenLight;
  /** How far the ambient lies from what was asked; null where nothing was. */
  readonly missMired: number | null;
  /** Reach less reference with it; null where nothing can be asked. */
  readonly inHandStops: number | null;
  /** Why not, where it then does not work. */
  readonly works: boolean;
  readonly edit: Edit<Shoot>;
};

export type ColourAsked = {
  readonly asked: Pick<SetupCaseInput, 'shoot' | 'kit' | 'setupId'>;
  /** The minute as it is seen now; its light is taken over. */
  readonly view: SetupView;
};

const MOST_SHOWN = 5;
const KELVIN_STEP = 10;

/** Which owned gels and white balance make the ambient so many mired bluer and leave the skin neutral, nearest first. */
export function gelChoices(
  { asked, view }: ColourAsked,
  bluerMired: number,
): readonly ColourChoice[] {
  const { kit } = asked;
  const camera = kit.cameras[view.setup.cameraId];
  const key = keyOf(view);
  if (camera === undefined || key === undefined) return [];
  const lens = stackShift(filtersNow(view, kit));
  return colourPairs({
    // Both behind what colours the lens, so that the white balance is what the camera needs.
    flashKelvin: behind(key.head.flashKelvin, lens),
    ambientKelvin: behind(seenLights(view, kit).ambientKelvin, lens),
    bluerMired,
    gels: inOrder(kit.gels).map(([id, { miredShift, stops }]) => ({ id, miredShift, stops })),
    settable: camera,
  })
    .slice(0, MOST_SHOWN)
    .map(({ gelIds, gelStops, missMired }) => {
      const flash = throughFilter(gelled(key.head.flashKelvin, gelsOf(kit, gelIds)), lens);
      const { kelvin, tint } = neutralSetting(flash);
      const whiteBalance = {
        kelvin: Math.round(kelvin / KELVIN_STEP) * KELVIN_STEP,
        tint: Math.round(tint) + 0,
      };
      return choiceOf(
        { asked, view },
        {
          gelIds,
          filterId: null,
          whiteBalance,
          gelStops,
          missMired,
          skin: seenLight(flash, whiteBalance),
          ambient: seenLight(throughFilter(colourOfAmbient(view), lens), whiteBalance),
          edit: together(tape(view, asked.setupId, gelIds), balance(asked.setupId, whiteBalance)),
        },
      );
    });
}

/** By mired alone; below 0 mired it is no temperature, but sums still hold. */
const behind = (kelvin: number, { miredShift }: ColourShift): number =>
  kelvinFromMired(miredFromKelvin(kelvin) + miredShift);

/** The skin is judged by both; so much green is seen as soon as ten mired. [lightingPractice] */
const MIRED_PER_GREEN = 10 / 4;
const off = ({ warmerMired, greener }: Pick<SeenLight, 'warmerMired' | 'greener'>): number =>
  Math.hypot(warmerMired, MIRED_PER_GREEN * greener);

/**
 * Every owned colour filter on the lens with the owned gels that bring the flash nearest to neutral
 * behind it: the white balance stays, sky and ambient keep the filter's colour. The filter costs
 * flash and ambient alike, the gels the flash alone.
 */
export function filterChoices({ asked, view }: ColourAsked): readonly ColourChoice[] {
  const { kit } = asked;
  const key = keyOf(view);
  if (key === undefined) return [];
  const whiteBalance = whiteBalanceOf(view.setup);
  const others = filtersNow(view, kit).filter(([, { kind }]) => kind !== 'colour');
  return inOrder(kit.filters)
    .filter(
      ([, { kind, miredShift, greenStops }]) =>
        kind === 'colour' && (miredShift !== 0 || greenStops !== 0),
    )
    .map(([filterId, filter]) => {
      const best = nearestToNeutral(kit, filter, key.head.flashKelvin, whiteBalance);
      return choiceOf(
        { asked, view },
        {
          ...best,
          filterId,
          whiteBalance,
          gelStops: gelsOf(kit, best.gelIds).reduce((sum, { stops }) => sum + stops, 0),
          missMired: null,
          ambient: seenLight(throughFilter(colourOfAmbient(view), filter), whiteBalance),
          edit: together(
            tape(view, asked.setupId, best.gelIds),
            editSetup(asked.setupId, { pinnedFilterIds: pinnedWith(view, others, filterId) }),
          ),
        },
      );
    });
}

type Taped = { readonly gelIds: readonly string[]; readonly skin: SeenLight };

/** So many of the nearest by plain sums are looked at as colours. */
const LOOKED_AT = 6;

function nearestToNeutral(
  kit: Kit,
  filter: ColourShift,
  flashKelvin: number,
  setting: WhiteBalance,
): Taped {
  const flashMired = miredFromKelvin(flashKelvin);
  const settingMired = miredFromKelvin(setting.kelvin);
  const { greener } = seenLight(gelled(setting.kelvin, [{ miredShift: 0, greenStops: 1 }]), {
    ...setting,
    tint: 0,
  });
  return taped(kit)
    .map((gelIds) => {
      const shift = shiftOfAll([...gelsOf(kit, gelIds), filter]);
      const roughly = off({
        warmerMired: flashMired + shift.miredShift - settingMired,
        greener: greener * shift.greenStops - setting.tint,
      });
      return { gelIds, shift, roughly };
    })
    .toSorted((one, other) => one.roughly - other.roughly)
    .slice(0, LOOKED_AT)
    .map(({ gelIds, shift }) => ({
      gelIds,
      skin: seenLight(gelled(flashKelvin, [shift]), setting),
    }))
    .reduce((one, other) => (off(other.skin) < off(one.skin) - 1e-9 ? other : one));
}

/** With the filters that are pinned; free ones give way, the colour filter takes stops of its own. */
const pinnedWith = (
  { setup }: SetupView,
  others: readonly (readonly [string, Filter])[],
  filterId: string,
): Record<string, true> => {
  const kept = setup.pinnedFilterIds === null ? [] : others;
  return Object.fromEntries([...kept.map(([id]) => id), filterId].map((id) => [id, true as const]));
};

function choiceOf(
  { asked, view }: ColourAsked,
  found: Omit<ColourChoice, 'inHandStops' | 'works'>,
): ColourChoice {
  const shoot = produce(asked.shoot, (draft) => found.edit(draft));
  const made = setupCase({ ...asked, shoot, instantMs: Number.NaN }, view.light);
  if (!made.ok || made.value.input === null) return { ...found, inHandStops: null, works: false };
  const { inHandStops, verdict } = judgeRecipe(made.value.input);
  return { ...found, inHandStops, works: verdict === 'works' };
}

const keyOf = ({ sources }: SetupView): SetupView['sources'][number] | undefined =>
  sources.find(({ light }) => light.role === 'key');

const gelsOf = ({ gels }: Kit, ids: readonly string[]): readonly Gel[] =>
  ids.flatMap((id) => gels[id] ?? []);

const gelled = (flashKelvin: number, gels: readonly ColourShift[]): Chromaticity =>
  throughFilter(whiteOfKelvin(flashKelvin), shiftOfAll(gels));

/** None, one or two of the owned gels, one kind twice included. */
const taped = ({ gels }: Kit): readonly (readonly string[])[] => {
  const ids = inOrder(gels).map(([id]) => id);
  return [
    [],
    ...ids.map((id) => [id]),
    ...ids.flatMap((id, place) => ids.slice(place).map((second) => [id, second])),
  ];
};

/** On key and fill: what lights the skin. */
const tape = ({ setup }: SetupView, setupId: string, gelIds: readonly string[]): Edit<Shoot> =>
  together(
    ...Object.entries(setup.lights)
      .filter(([, { role }]) => role === 'key' || role === 'fill')
      .map(([lightId]) =>
        editLight(setupId, lightId, { gelId: gelIds[0] ?? null, secondGelId: gelIds[1] ?? null }),
      ),
  );

const balance = (setupId: string, { kelvin, tint }: WhiteBalance): Edit<Shoot> =>
  editSetup(setupId, { whiteBalanceKelvin: kelvin, whiteBalanceTint: tint });
