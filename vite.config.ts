import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  base: './',
  plugins: [react()],
  build: { target: 'es2023', modulePreload: { polyfill: false }, chunkSizeWarningLimit: 600 },
  worker: { format: 'es' },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          environment: 'node',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/journeys/**', 'tests/bench/**'],
        },
      },
    ],
  },
});
