import { build, preview } from 'vite';

export type ServedApp = {
  /** Ends in a slash. */
  readonly url: string;
  readonly close: () => Promise<void>;
};

/** As shipped: a NODE_ENV of the calling tool (test, development) must not reach the build. */
export const buildApp = async (): Promise<void> => {
  const callers = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  try {
    await build({ logLevel: 'warn' });
  } finally {
    if (callers === undefined) delete process.env['NODE_ENV'];
    else process.env['NODE_ENV'] = callers;
  }
};

/** Serves the last build on this machine only, on the port or the next free one; 0 is any. */
export const serveApp = async (port = 0): Promise<ServedApp> => {
  const server = await preview({
    logLevel: 'warn',
    preview: { host: '127.0.0.1', port, strictPort: false, open: false },
  });
  const url = server.resolvedUrls?.local[0];
  if (url === undefined) throw new Error('The server of the built app has no address.');
  return { url, close: () => server.close() };
};
