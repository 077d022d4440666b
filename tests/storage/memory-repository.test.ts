import { memoryRepository } from '../../src/storage/memory-repository.ts';
import { describeRepository } from '../support/repository-contract.ts';

describeRepository('kept in memory', () => {
  const repository = memoryRepository();
  return [repository, repository];
});
