import { atlasFileText } from '../../src/atlas/build-atlas-files.ts';
import type { ReadAtlasFile } from '../../src/atlas/atlas-file.ts';

/** Reads the atlas as the build would write it, each file made once. */
export const atlasFilesOfTheBuild = (): ReadAtlasFile => {
  const made = new Map<string, Promise<string>>();
  return (path) => {
    const text = made.get(path) ?? atlasFileText(path, process.cwd());
    made.set(path, text);
    return text;
  };
};
