import { demoKit } from '../../core/plan/demo-kit.ts';
import { demoShoot } from '../../core/plan/demo-shoot.ts';
import { browserPlaces, claimAuthorId } from '../../storage/author.ts';
import type { ShootRepository } from '../../storage/shoot-repository.ts';
import { computeClient, type ComputeClient } from '../../worker/client.ts';
import { groundClient } from '../../worker/ground/ground-client.ts';
import type { Services } from './services.ts';

type Given = {
  readonly repository: ShootRepository;
  readonly newId: () => string;
  readonly nowMs: () => number;
};

/** Everything the page works with; the demo shoot and its kit are put in on the first start. */
export async function openServices({ repository, newId, nowMs }: Given): Promise<Services> {
  const kit = await repository.read('kit', 'kit');
  if (!kit.ok && kit.problem.kind === 'missing') await repository.create('kit', demoKit());
  const shoots = await repository.listShoots();
  if (shoots.ok && shoots.value.length === 0) await repository.create('shoot', demoShoot());
  return {
    repository,
    compute: computeClient(computeWorker()),
    pictures: startedWhenAsked(() => computeClient(computeWorker())),
    ground: groundClient(
      () =>
        new Worker(new URL('../../worker/ground/ground.worker.ts', import.meta.url), {
          type: 'module',
        }),
    ),
    nowMs,
    newId,
    authorId: await claimAuthorId(browserPlaces(window), newId),
    ownFile: (path) => fetch(new URL(path, document.baseURI)),
  };
}

const computeWorker = (): Worker =>
  new Worker(new URL('../../worker/compute.worker.ts', import.meta.url), { type: 'module' });

function startedWhenAsked(start: () => ComputeClient): ComputeClient {
  let client: ComputeClient | null = null;
  return { request: (key, job) => (client ??= start()).request(key, job) };
}

/** The shoot this device had open last, or its first. */
export async function lastShootId(repository: ShootRepository): Promise<string> {
  const shoots = await repository.listShoots();
  const last = await repository.setting('open-shoot');
  const open = shoots.ok
    ? (shoots.value.find(({ id }) => last.ok && id === last.value) ?? shoots.value[0])
    : undefined;
  return open?.id ?? 'demo';
}
