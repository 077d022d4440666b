import { lazy, memo, Suspense, useMemo, useState, type ReactNode } from 'react';

import type { SkyCondition } from '../../../../core/daylight/sky-condition.ts';
import type { SetupLight, SetupScene } from '../../../../core/plan/setup-light.ts';
import type { Spot } from '../../../../core/plan/shoot.ts';
import { useShoot } from '../../../state/documents.tsx';
import { SkylineStrip } from '../SkylineStrip.tsx';
import { makersOf, obstacleCounts, sharesOf } from './skyline-sources.ts';
import { madeOf, originsOf } from './source-words.ts';

const SkylinePanel = lazy(async () => ({
  default: (await import('./SkylinePanel.tsx')).SkylinePanel,
}));

type SkylineSectionProps = {
  readonly spotId: string;
  readonly spot: Spot;
  readonly scene: SetupScene;
  readonly light: SetupLight;
  readonly condition: SkyCondition;
};

/** The low sky over the skyline, what the skyline is made of, and how to make it better. */
export const SkylineSection = memo(function SkylineSection(props: SkylineSectionProps): ReactNode {
  const { spotId, spot, scene, light, condition } = props;
  const shoot = useShoot();
  const [opened, setOpened] = useState(false);
  const counts = obstacleCounts(shoot);
  const { skyline, terrain, skylineNow } = spot;
  const { makers, shares } = useMemo(() => {
    const seen = { skyline, terrain, skylineNow } as Spot;
    return { makers: makersOf(seen), shares: sharesOf(seen) };
  }, [skyline, terrain, skylineNow]);
  return (
    <section aria-labelledby="skyline-in-stops">
      <h2 id="skyline-in-stops">Skyline in stops</h2>
      <SkylineStrip
        scene={scene}
        light={light}
        condition={condition}
        origin={originsOf(spot, shares.obstacles)}
        makers={makers}
      />
      <details onToggle={(event) => event.currentTarget.open && setOpened(true)}>
        <summary data-open="skyline">Skyline: {madeOf(spot, counts)}</summary>
        {opened ? (
          <Suspense fallback={<p data-loading>Opening…</p>}>
            <SkylinePanel spotId={spotId} spot={spot} shares={shares} counts={counts} />
          </Suspense>
        ) : null}
      </details>
    </section>
  );
});
