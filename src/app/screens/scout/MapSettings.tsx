import { Suspense, useRef, useState, type ReactNode } from 'react';

import { lazyPart } from '../../state/lazy-part.ts';
import './map-settings.css';
import type { MapTiles } from './use-map-tiles.ts';

const MapSettingsContents = lazyPart(
  async () => (await import('./MapSettingsContents.tsx')).MapSettingsContents,
);

/** Opens what the map shows and whom it asks. */
export function MapSettings({ map }: { readonly map: MapTiles }): ReactNode {
  const details = useRef<HTMLDetailsElement>(null);
  const [opened, setOpened] = useState(false);
  return (
    <details
      ref={details}
      className="map-settings"
      onToggle={(event) => setOpened(opened || event.currentTarget.open)}
    >
      <summary data-open="map">Map</summary>
      <div>
        <Suspense fallback={<p data-loading>Opening…</p>}>
          {opened ? (
            <MapSettingsContents
              map={map}
              onShown={() => details.current?.removeAttribute('open')}
            />
          ) : null}
        </Suspense>
      </div>
    </details>
  );
}
