import { memoryRepository } from '../../src/storage/memory-repository.ts';
import { describeBlobs } from '../support/blob-contract.ts';
import { describeRepository } from '../support/repository-contract.ts';

describeRepository('kept in memory', () => {
  const repository = memoryRepository();
  return [repository, repository];
});

describeBlobs('kept in memory', () => {
  const repository = memoryRepository();
  return [repository, repository];
});
