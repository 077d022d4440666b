import './scout.css';
import { Suspense, useCallback, useEffect, useMemo, useState, type ReactNode } from 'react';

import type { GeoPoint } from '../../../core/place/geo-point.ts';
import { editSpotFraming } from '../../../core/plan/edits.ts';
import { setupsAt } from '../../../core/plan/setup-light.ts';
import { clockTime } from '../../../core/units/civil-time.ts';
import { wrapDeg360 } from '../../../core/units/angle.ts';
import { RingLegend } from '../../map/RingLegend.tsx';
import { SpotMap } from '../../map/SpotMap.tsx';
import { useAtlas } from '../../state/atlas.ts';
import { useEditShoot, useShoot } from '../../state/documents.tsx';
import { useGroundView } from '../../state/ground-view.ts';
import { useHoldDay } from '../../state/hold-days.ts';
import { look, useView } from '../../state/view.ts';
import { AddSpot } from './lazy-sections.ts';
import { useDeclinationAt } from './Declination.tsx';
import { CompareButton } from './CompareButton.tsx';
import { InOutButton } from './InOutButton.tsx';
import { GroundMap, GroundPanel, GroundSheet } from './ground/GroundPanel.tsx';
import { MapSettings } from './MapSettings.tsx';
import { useMapTiles } from './use-map-tiles.ts';
import { ScoutStrip } from './ScoutStrip.tsx';
import { SpotChooser } from './SpotChooser.tsx';
import { SpotSheet } from './SpotSheet.tsx';
import { useMapSpots } from './use-map-spots.ts';
import { useScouted } from './use-scouted.ts';
import { useSpotPlaces } from './use-spot-places.ts';

/** The map of the spots, the day, and the sheet of the spot that is looked at. */
export function ScoutScreen(): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const { scouted, minuteMs } = useScouted();
  const { spots, ringRangeEv, ringsAtMs } = useMapSpots(shoot, minuteMs);
  const hold = useHoldDay(scouted?.setup?.[0] ?? null);
  const places = useSpotPlaces();
  const tiles = useMapTiles();
  const declinationAt = useDeclinationAt();
  const [adding, setAdding] = useState(false);
  const drawing = useGroundView(({ tool }) => tool !== null);
  const outline = useOutlineOnce();
  const figuresAreThere = scouted === null || scouted.setup === null || hold !== null;
  const drawn = useDrawn(outline.settled && figuresAreThere);

  const select = useCallback(
    (spotId: string): void => {
      const here = setupsAt(shoot, spotId).map(([id]) => id);
      const { setupId } = useView.getState();
      const chosen = setupId !== null && here.includes(setupId) ? setupId : (here[0] ?? setupId);
      look({ spotId, setupId: chosen });
    },
    [shoot],
  );
  const turn = useCallback(
    (id: string, bearing: number): void => {
      const bearingDeg = wrapDeg360(Math.round(bearing * 10) / 10);
      const name = shoot.spots[id]?.name ?? 'the spot';
      edit(`turn ${name}`, editSpotFraming(id, { bearingDeg }));
    },
    [shoot, edit],
  );
  const fitTo = useMemo(() => spots.map(({ point }) => point), [spots]);
  const place = (point: GeoPoint, name: string | null): void => {
    setAdding(false);
    void places.add({ point, name, like: scouted?.spot ?? null });
  };

  return (
    <div className="scout" data-first-figures={drawn ? 'drawn' : undefined}>
      <div className="scout-tools">
        <SpotChooser shoot={shoot} spotId={scouted?.id ?? null} onChoose={select} />
        <button
          type="button"
          className={adding ? '' : 'first'}
          aria-pressed={adding}
          data-add-spot
          onClick={() => setAdding(!adding)}
        >
          Add a spot
        </button>
        <GroundPanel />
        <CompareButton />
        <InOutButton spotId={scouted?.id ?? null} />
        <MapSettings map={tiles} />
      </div>
      <div className="scout-day">
        {scouted === null ? null : <ScoutStrip scouted={scouted} hold={hold} minuteMs={minuteMs} />}
      </div>
      <div className="scout-map">
        <SpotMap
          spots={spots}
          selectedId={scouted?.id ?? null}
          ringRangeEv={ringRangeEv}
          tiles={tiles.tiles}
          localMap={tiles.local.map}
          declinationAt={declinationAt}
          adding={adding}
          drawing={drawing}
          onSelect={select}
          onMove={places.move}
          onTurn={turn}
          onAddAt={(point) => place(point, null)}
          loadOutline={outline.load}
          fitTo={fitTo}
          legend={
            <RingLegend
              ringRangeEv={ringRangeEv}
              atTime={clockTime(ringsAtMs, scouted?.spot.zone ?? 'Etc/UTC')}
            />
          }
        >
          {(map) => (
            <GroundMap map={map} spot={scouted?.spot ?? null} minuteMs={minuteMs} adding={adding} />
          )}
        </SpotMap>
      </div>
      <aside className="scout-sheet" aria-label="Spot">
        {adding ? (
          <Suspense fallback={null}>
            <AddSpot onPlace={place} onCancel={() => setAdding(false)} />
          </Suspense>
        ) : null}
        <GroundSheet spot={scouted?.spot ?? null} minuteMs={minuteMs} />
        {scouted === null ? (
          adding ? null : (
            <p>This shoot has no spot yet. Add one to see its sky.</p>
          )
        ) : (
          <SpotSheet
            key={scouted.id}
            spotId={scouted.id}
            {...scouted}
            hold={hold}
            minuteMs={minuteMs}
            places={places}
            figuresStand={drawn}
          />
        )}
      </aside>
    </div>
  );
}

/** The map's outline, and whether the first of it has come or failed. */
function useOutlineOnce(): {
  readonly load: ReturnType<typeof useAtlas>['outline'];
  readonly settled: boolean;
} {
  const { outline } = useAtlas();
  const [settled, setSettled] = useState(false);
  const load = useCallback<typeof outline>(
    (detail) => outline(detail).finally(() => setSettled(true)),
    [outline],
  );
  return { load, settled };
}

/** True one frame after everything is there, so that it has been painted. */
function useDrawn(ready: boolean): boolean {
  const [drawn, setDrawn] = useState(false);
  useEffect(
    function afterPaint() {
      if (!ready || drawn) return undefined;
      const frame = requestAnimationFrame(() => setDrawn(true));
      return () => cancelAnimationFrame(frame);
    },
    [ready, drawn],
  );
  return drawn;
}
