import { ratioFromStops } from '../units/stops.ts';

/** How a head's own display counts its power. */
export type PowerScale = {
  readonly kind: 'fraction' | 'stops-below-full' | 'numbered-stops' | 'percent' | 'watt-seconds';
  readonly stepStops: number;
  /** Lowest power, stops below full: −8 is 1/256. */
  readonly minPowerStops: number;
  /** What the display shows at full power, for numbered stops. */
  readonly fullPowerNumber?: number | undefined;
  /** Stored energy at full power, for watt-seconds. */
  readonly energyWs?: number | undefined;
};

/** The nearest power the dial has, counted in its steps from full, never outside it. */
export const roundToPowerDial = (
  powerStops: number,
  scale: Pick<PowerScale, 'stepStops' | 'minPowerStops'>,
): number => {
  const dialled = Math.round(powerStops / scale.stepStops) * scale.stepStops;
  return Math.min(0, Math.max(scale.minPowerStops, Math.round(dialled * 1e6) / 1e6)) + 0;
};

/** The power as the head shows it, and always the stops below full beside it. */
export const formatPower = (
  powerStops: number,
  scale: PowerScale,
): { readonly dial: string; readonly below: string } => ({
  dial: dialText(powerStops, scale),
  below: powerStops > -0.05 ? 'full power' : `${tenths(-powerStops)} below full`,
});

const dialText = (powerStops: number, scale: PowerScale): string => {
  switch (scale.kind) {
    case 'fraction':
      return fractionText(powerStops);
    case 'stops-below-full':
      return powerStops > -0.05 ? 'full' : `full − ${tenths(-powerStops)}`;
    case 'numbered-stops':
      return ((scale.fullPowerNumber ?? 10) + powerStops).toFixed(1);
    case 'percent':
      return `${significant(100 * ratioFromStops(powerStops))} %`;
    case 'watt-seconds':
      return `${significant((scale.energyWs ?? Number.NaN) * ratioFromStops(powerStops))} Ws`;
  }
};

/** The fraction at or below, and the tenths above it: −0.8 is '1/2 + 0.2'. */
const fractionText = (powerStops: number): string => {
  const inTenths = Math.round(powerStops * 10);
  const halvings = Math.ceil(-inTenths / 10);
  const above = inTenths + halvings * 10;
  const fraction = `1/${2 ** halvings}`;
  return above === 0 ? fraction : `${fraction} + 0.${above}`;
};

const tenths = (stops: number): string => (Math.round(stops * 10) / 10).toFixed(1);

const significant = (value: number): string =>
  value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
