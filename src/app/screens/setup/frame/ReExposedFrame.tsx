import { useMemo, useState, type ReactNode } from 'react';

import { photoEv100 } from '../../../../core/plan/photo-reading.ts';
import type { PhotoMask } from '../../../../core/plan/re-exposed-photo.ts';
import type { SetupView, WorkingSetup } from '../../../../core/plan/setup-view.ts';
import type { Photo } from '../../../../core/plan/spot-schema.ts';
import { signedTenths } from '../../../ui/figure-text.ts';
import { NumberField } from '../../../ui/NumberField.tsx';
import { Switch } from '../../../ui/Switch.tsx';
import { FrameCanvas, type FrameMark } from './FrameCanvas.tsx';
import { usePhotoPixels } from './use-photo-pixels.ts';
import { usePicture } from '../../../state/pictures.ts';

type ReExposedFrameProps = {
  readonly photo: Photo;
  readonly view: SetupView;
  readonly working: WorkingSetup;
};

const DAYLIGHT_KELVIN = 5500;

const MASK_FIELDS = [
  { key: 'xFraction', label: 'Right of the middle', field: 'mask-x', min: -50 },
  { key: 'yFraction', label: 'Above the middle', field: 'mask-y', min: -50 },
  { key: 'halfWidthFraction', label: 'Half as wide', field: 'mask-width', min: 1 },
  { key: 'halfHeightFraction', label: 'Half as high', field: 'mask-height', min: 1 },
] as const satisfies readonly { key: keyof PhotoMask; label: string; field: string; min: number }[];

/** A scouting photo as the recipe's settings and white balance would have taken it. */
export function ReExposedFrame({ photo, view, working }: ReExposedFrameProps): ReactNode {
  const pixels = usePhotoPixels(photo.contentHash);
  const [photoKelvin, setPhotoKelvin] = useState(DAYLIGHT_KELVIN);
  const [mask, setMask] = useState<PhotoMask | null>(null);
  const photoEv = photoEv100(photo);
  const { cameraEv, keyStops } = working.recipe;
  const { whiteBalanceKelvin, whiteBalanceTint } = view.setup;
  const job = useMemo(
    () =>
      photoEv === null || pixels === null || typeof pixels === 'string'
        ? null
        : {
            kind: 're-exposed-photo' as const,
            input: {
              photo: pixels,
              asked: {
                photoEv,
                photoWhiteBalance: { kelvin: photoKelvin, tint: 0 },
                cameraEv,
                whiteBalance: { kelvin: whiteBalanceKelvin, tint: whiteBalanceTint },
                figure: mask && { mask, keyStops },
              },
            },
          },
    [photoEv, pixels, photoKelvin, cameraEv, whiteBalanceKelvin, whiteBalanceTint, mask, keyStops],
  );
  const shown = usePicture(job);
  const mark = useMemo(
    (): FrameMark | null =>
      mask && {
        kind: 'ellipse',
        xFraction: mask.xFraction,
        yFraction: mask.yFraction,
        widthFraction: 2 * mask.halfWidthFraction,
        heightFraction: 2 * mask.halfHeightFraction,
      },
    [mask],
  );
  if (photoEv === null)
    return (
      <p className="gap" role="alert">
        {photo.name} does not say at which shutter, aperture and ISO it was taken, so it cannot be
        shown at others. Add its reading to the spot instead.
      </p>
    );
  if (typeof pixels === 'string')
    return (
      <p className="gap" role="alert">
        {pixels}
      </p>
    );
  return (
    <figure className="predicted-frame">
      <FrameCanvas
        pixels={shown}
        widthPx={photo.widthPx}
        heightPx={photo.heightPx}
        label={`${photo.name} as these settings would have taken it`}
        mark={mark}
      />
      <figcaption className="quiet">
        <span data-figure="re-exposed">
          {signedTenths(photoEv - cameraEv)} stops against the photo’s own exposure
        </span>
        . The light is the photo’s, of its minute; its tone curve is taken as plain sRGB, and what
        clipped in it stays clipped.
      </figcaption>
      <div className="fields">
        <NumberField
          label="White balance of the photo"
          field="photo-kelvin"
          unit="K"
          min={2000}
          max={15000}
          step={100}
          digits={0}
          value={photoKelvin}
          onCommit={(kelvin) => kelvin !== null && setPhotoKelvin(kelvin)}
        />
        <Switch
          label="A figure stands in it, lit by the key"
          field="photo-mask"
          on={mask !== null}
          onTurn={(on) =>
            setMask(
              on
                ? { xFraction: 0, yFraction: -0.1, halfWidthFraction: 0.1, halfHeightFraction: 0.3 }
                : null,
            )
          }
        />
        {mask === null
          ? null
          : MASK_FIELDS.map(({ key, label, field, min }) => (
              <NumberField
                key={key}
                label={label}
                field={field}
                unit="%"
                min={min}
                max={50}
                step={1}
                digits={0}
                value={Math.round(100 * mask[key])}
                onCommit={(percent) =>
                  percent !== null && setMask({ ...mask, [key]: percent / 100 })
                }
              />
            ))}
      </div>
    </figure>
  );
}
