/** Reads one data file of the atlas, such as 'atlas/places.tsv', as text. */
export type ReadAtlasFile = (path: string) => Promise<string>;

/**
 * Reads from the app's own origin. `baseUrl` is the address the app was opened at; `fetchFile`
 * the browser's fetch. Rejects when the file is not there.
 */
export const atlasFileReader =
  (baseUrl: string, fetchFile: (url: URL) => Promise<Response>): ReadAtlasFile =>
  async (path) => {
    const response = await fetchFile(new URL(path, baseUrl));
    if (!response.ok) throw new Error(`${path} of the app is missing (answer ${response.status})`);
    return response.text();
  };
