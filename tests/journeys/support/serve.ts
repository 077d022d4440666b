import { buildApp, serveApp } from '../../support/serve-app.ts';

/** Builds and serves the app once for all journeys; the workers inherit its address. */
export default async function serve(): Promise<() => Promise<void>> {
  await buildApp();
  const app = await serveApp();
  process.env['APP_URL'] = app.url;
  return app.close;
}
