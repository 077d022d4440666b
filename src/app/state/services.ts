import { createContext, useContext } from 'react';

import type { ShootRepository } from '../../storage/shoot-repository.ts';
import type { ComputeClient } from '../../worker/client.ts';
import type { GroundClient } from '../../worker/ground/ground-client.ts';

/** What the page is given at its start; nothing else reaches clock, storage or network. */
export type Services = {
  readonly repository: ShootRepository;
  readonly compute: ComputeClient;
  /** A second worker of the same kind, for pictures: they wait for no column. */
  readonly pictures: ComputeClient;
  /** Long work on ground and dates, with progress and cancelling. */
  readonly ground: GroundClient;
  readonly nowMs: () => number;
  readonly newId: () => string;
  readonly authorId: string;
  /** Fetches a file of the app's own origin. */
  readonly ownFile: (path: string) => Promise<Response>;
};

export const ServicesContext = createContext<Services | null>(null);

export function useServices(): Services {
  const services = useContext(ServicesContext);
  if (services === null) throw new Error('the app was mounted without its services');
  return services;
}
