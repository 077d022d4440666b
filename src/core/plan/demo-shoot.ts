import { demoSetups } from './demo-setups.ts';
import { demoSpots } from './demo-spots.ts';
import { SHOOT_FORMAT, SHOOT_VERSION, type Shoot } from './shoot.ts';

/**
 * The shoot that opens on first start: a string quartet on a stretch of real coast. The people,
 * the booking, the skylines and the notes are invented.
 */
export function demoShoot(): Shoot {
  return {
    format: SHOOT_FORMAT,
    version: SHOOT_VERSION,
    id: 'demo',
    title: 'Quartet album cover',
    date: '2027-05-14',
    condition: 'broken-cloud',
    spots: demoSpots(),
    obstacles: {},
    outlineSets: {},
    setups: demoSetups(),
  };
}
