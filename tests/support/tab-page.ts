import { browserPlaces, claimAuthorId } from '../../src/storage/author.ts';
import { indexedDbRepository } from '../../src/storage/indexed-db-repository.ts';

/** What a page of the app does first, for a frame that plays a second tab. */
export const openPage = async (
  databaseName: string,
): Promise<{
  readonly repository: ReturnType<typeof indexedDbRepository>;
  readonly authorId: string;
}> => ({
  repository: indexedDbRepository(databaseName),
  authorId: await claimAuthorId(browserPlaces(window), () => crypto.randomUUID()),
});
