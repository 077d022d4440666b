import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { SetupScreen } from '../../../../src/app/screens/setup/SetupScreen.tsx';
import { DocumentsProvider } from '../../../../src/app/state/documents.tsx';
import { openServices } from '../../../../src/app/state/open-services.ts';
import { ServicesContext, type Services } from '../../../../src/app/state/services.ts';
import { useView } from '../../../../src/app/state/view.ts';
import { demoKit } from '../../../../src/core/plan/demo-kit.ts';
import { demoShoot } from '../../../../src/core/plan/demo-shoot.ts';
import type { Shoot } from '../../../../src/core/plan/shoot.ts';
import { memoryRepository } from '../../../../src/storage/memory-repository.ts';
import '../../../../src/app/shell/theme.css';
import '../../../../src/app/ui/ui.css';

const find = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`nothing on the page is ${selector}`);
  return found;
};
const figure = (name: string): string =>
  document.querySelector(`[data-figure="${name}"]`)?.textContent?.trim() ?? '';
const note = (name: string): string =>
  document.querySelector(`[data-note="${name}"]`)?.textContent?.trim() ?? '';
const type = async (name: string, text: string): Promise<void> => {
  await userEvent.fill(find(`[data-field="${name}"]`), text);
  await userEvent.keyboard('{Enter}');
};
const press = async (selector: string): Promise<void> => userEvent.click(find(selector));

/** Others may be busy on this machine: what is drawn late counts. */
const soon = <Found,>(look: () => Found | Promise<Found>): Promise<Found> =>
  vi.waitFor(look, { timeout: 8000 });

let services: Services;
let ids = 0;

beforeAll(async () => {
  services = await openServices({
    repository: memoryRepository(),
    newId: () => `made-${(ids += 1)}`,
    nowMs: () => 0,
  });
});

const open = async (kit = demoKit()): Promise<Services['repository']> => {
  const repository = memoryRepository();
  await repository.create('kit', kit);
  await repository.create('shoot', demoShoot());
  useView.setState({ spotId: null, setupId: 'quartet', minuteMs: null, said: '' });
  await render(
    <ServicesContext value={{ ...services, repository, nowMs: () => 0 }}>
      <DocumentsProvider shootId="demo" kitId="kit" waiting={null}>
        <SetupScreen />
      </DocumentsProvider>
    </ServicesContext>,
  );
  await soon(() => find('[data-first-figures="drawn"]'));
  return repository;
};

const shootOf = async (repository: Services['repository']): Promise<Shoot> => {
  const found = await repository.read('shoot', 'demo');
  if (!found.ok || found.value === null) throw new Error('expected the demo shoot');
  return found.value;
};

beforeEach(async () => {
  await page.viewport(1440, 900);
});

describe('white balance', () => {
  test('a tungsten setting makes flash and sky bluer, and the step says so', async () => {
    await open();
    expect(figure('look-key')).toBe('neutral');
    expect(figure('white-balance')).toContain('5600 K');
    await type('white-balance-kelvin', '3200');
    // 1e6/3200 − 1e6/5600 = 134.
    await soon(() => expect(figure('look-key')).toBe('134 mired bluer'));
    expect(figure('white-balance')).toContain('3200 K: the key on skin 134 mired bluer');
    await type('white-balance-tint', '12');
    await soon(() => expect(figure('look-key')).toContain('12 more magenta'));
  });

  test('what was typed wrong is said and changes nothing', async () => {
    await open();
    await type('white-balance-kelvin', '90');
    await soon(() => expect(document.querySelector('.fault')?.textContent).toContain('2000'));
    expect(figure('look-key')).toBe('neutral');
  });

  test('a pair is used in one edit: gels on key and fill, and the white balance', async () => {
    const repository = await open();
    await press('[data-open="colour-pairs"]');
    await soon(() => find('[data-field="bluer-mired"]'));
    await type('bluer-mired', '200');
    await soon(() => expect(figure('pair-0')).toContain('CTO'));
    expect(figure('pair-0-skin')).toBe('neutral');
    expect(figure('pair-0-cost')).toMatch(/^costs the flash \d\.\d stops: /);
    await press('[data-use="pair-0"]');
    await soon(async () => {
      const { quartet } = (await shootOf(repository)).setups;
      expect(quartet?.whiteBalanceKelvin).toBeLessThan(5000);
      expect(quartet?.lights.key?.gelId).not.toBeNull();
      expect(quartet?.lights.fill?.gelId).toBe(quartet?.lights.key?.gelId);
    });
    await soon(() => expect(figure('look-key')).toBe('neutral'));
  });

  test('a colour filter is offered with the nearest gels of the kit, and says what the skin then is', async () => {
    await open();
    await press('[data-open="colour-pairs"]');
    await soon(() => expect(figure('filter-pair-0')).toContain('80A blue on the lens'));
    expect(figure('filter-pair-0-skin')).toMatch(/neutral|mired/);
  });
});

describe('filters before the lens', () => {
  test('what they come to is said as they are pinned', async () => {
    await open();
    await press('[data-pin="filters"]');
    await soon(() => find('[data-field="filter-grad-2"]'));
    for (const id of ['nd-2', 'nd-3']) {
      const input = find(`[data-field="filter-${id}"]`) as HTMLInputElement;
      if (!input.checked) await userEvent.click(input);
    }
    await soon(() => expect(figure('stack-stops')).toContain('5.0 stops (1.5)'));
    expect(figure('stack-depth')).toContain('the corners are cut');
    expect(figure('autofocus')).toContain('autofocus is stated down to');
    await press('[data-field="filter-polariser"]');
    // The camera looks into the sun: there is nothing to polarise.
    await soon(() => expect(figure('polariser-frame')).toBe('nothing beyond its even loss'));
    await press('[data-field="filter-grad-2"]');
    await soon(() => expect(figure('graduated-face')).toContain('On the heads'));
    await type('graduation', '20');
    await soon(() =>
      expect(figure('graduation')).toBe('from 8 % over the centre up to 33 % over the centre'),
    );
  });

  test('a stack that no exposure opens is a sentence', async () => {
    const kit = demoKit();
    Object.assign(kit.filters['nd-3'] ?? {}, { stops: 20 });
    await open(kit);
    await press('[data-pin="filters"]');
    await soon(() => find('[data-field="filter-nd-3"]'));
    await press('[data-field="filter-nd-3"]');
    await soon(() => expect(note('shut-stack')).toMatch(/No exposure opens this stack/));
  });
});
