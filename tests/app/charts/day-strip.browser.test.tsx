import { useState, type ReactNode } from 'react';
import { expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-react';

import { DayStrip } from '../../../src/app/charts/DayStrip.tsx';
import '../../../src/app/shell/theme.css';

const at = (clock: string): number => Date.parse(`2027-05-14T${clock}+02:00`);

const Strip = ({ told }: { readonly told: number[] }): ReactNode => {
  const [minuteMs, setMinuteMs] = useState(at('20:00'));
  return (
    <div style={{ width: 130, height: 540 }}>
      <DayStrip
        startMs={at('04:00')}
        endMs={at('22:00')}
        zone="Europe/Rome"
        minuteMs={minuteMs}
        onMinute={(ms) => {
          told.push(ms);
          setMinuteMs(ms);
        }}
        bands={[{ fromMs: at('19:46'), toMs: at('21:06'), kind: 'hold' }]}
        events={[{ ms: at('20:27'), label: 'sunset' }]}
      />
    </div>
  );
};

const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));

test('the strip is a slider that says its clock time and moves by keys', async () => {
  const told: number[] = [];
  const screen = await render(<Strip told={told} />);
  const slider = screen.getByRole('slider');
  await expect.element(slider).toHaveAttribute('aria-valuetext', '20:00');
  slider.element().focus();
  await userEvent.keyboard('{ArrowDown}');
  await expect.element(slider).toHaveAttribute('aria-valuetext', '20:01');
  await userEvent.keyboard('{PageUp}');
  await expect.element(slider).toHaveAttribute('aria-valuetext', '19:01');
  await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
  await expect.element(slider).toHaveAttribute('aria-valuetext', '18:51');
  await userEvent.keyboard('{End}');
  await expect.element(slider).toHaveAttribute('aria-valuetext', '22:00');
});

test('a drag tells at most one minute a frame, and the last one', async () => {
  const told: number[] = [];
  const screen = await render(<Strip told={told} />);
  const slider = screen.getByRole('slider').element() as HTMLElement;
  slider.setPointerCapture = () => undefined;
  slider.hasPointerCapture = () => true;
  const track = slider.querySelector('.track')?.getBoundingClientRect() ?? new DOMRect();
  const point = (type: string, share: number): boolean =>
    slider.dispatchEvent(
      new PointerEvent(type, {
        pointerId: 1,
        bubbles: true,
        clientX: track.left + 20,
        clientY: track.top + share * track.height,
      }),
    );
  await frame();
  point('pointerdown', 0.5);
  for (let share = 0.5; share < 0.75; share += 0.01) point('pointermove', share);
  point('pointermove', 0.75);
  expect(told).toEqual([]);
  await frame();
  await frame();
  expect(told).toEqual([at('17:30')]);
});
