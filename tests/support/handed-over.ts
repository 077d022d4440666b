import { createHash } from 'node:crypto';

import { demoKit } from '../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../src/core/plan/demo-shoot.ts';
import type { HandOverProblem } from '../../src/exchange/hand-over/hand-over-problem.ts';
import { packHandOver, type PackedHandOver } from '../../src/exchange/hand-over/pack-hand-over.ts';
import { readHandOver } from '../../src/exchange/hand-over/read-hand-over.ts';
import { writeShootFile } from '../../src/exchange/shoot-file.ts';

export const APP = 'https://example.org/undersky/';

export const sha256 = async (bytes: Uint8Array): Promise<string> =>
  createHash('sha256').update(bytes).digest('hex');

export const packed = async (text: string): Promise<PackedHandOver> => {
  const result = await packHandOver(text, sha256);
  if (!result.ok) throw new Error(result.problem.sentence);
  return result.value;
};

export const readBack = async (...links: readonly string[]): Promise<string> => {
  const text = await readHandOver(links, sha256);
  if (!text.ok) throw new Error(text.problem.sentence);
  return text.value;
};

export const problemOf = async (...links: readonly string[]): Promise<HandOverProblem> => {
  const text = await readHandOver(links, sha256);
  if (text.ok) throw new Error('it was taken');
  return text.problem;
};

export const demoFile = (): string =>
  writeShootFile({
    shoot: demoShoot(),
    kit: demoKit(),
    photos: {},
    exportedAtMs: 1_810_000_000_000,
  });

/** Text of a hash chain: packed and written in base64url it is about as long as it was. */
export const dense = (bytes: number): string => {
  let text = '';
  for (let at = 0; text.length < bytes; at += 1)
    text += createHash('sha256').update(String(at)).digest('base64url');
  return text.slice(0, bytes);
};
