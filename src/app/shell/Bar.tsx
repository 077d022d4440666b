import { lazy, Suspense, useEffect, useState, type ReactNode } from 'react';

import { SKY_CONDITIONS, type SkyCondition } from '../../core/daylight/sky-condition.ts';
import { editShoot } from '../../core/plan/edits.ts';
import { formatDate } from '../../core/units/civil-time.ts';
import { useEditShoot, useShoot, useSteps } from '../state/documents.tsx';
import { useServices } from '../state/services.ts';
import { CONDITION_NAMES } from '../ui/condition-names.ts';
import { SCREENS, type ScreenPath } from './route.ts';
import { SCREEN_MODULES } from './screen-modules.ts';

const ShootSheet = lazy(async () => ({ default: (await SCREEN_MODULES.shootSheet()).ShootSheet }));

type BarProps = {
  readonly path: ScreenPath;
  readonly onOpenShoot: (id: string) => void;
};

export function Bar({ path, onOpenShoot }: BarProps): ReactNode {
  const shoot = useShoot();
  const edit = useEditShoot();
  const [sheetOpen, setSheetOpen] = useState(false);
  return (
    <header className="bar">
      <span className="word">Undersky</span>
      <nav aria-label="Screens">
        {SCREENS.map((screen) => (
          <a
            key={screen.path}
            href={`#${screen.path}`}
            aria-current={screen.path === path ? 'page' : undefined}
          >
            {screen.title}
          </a>
        ))}
      </nav>
      <div className="controls">
        <button type="button" data-open-shoot-sheet onClick={() => setSheetOpen(true)}>
          {shoot.title} <strong>{formatDate(shoot.date, 'en-GB')}</strong>
        </button>
        <label>
          Sky
          <select
            data-field="condition"
            value={shoot.condition}
            onChange={(event) => {
              const condition = event.currentTarget.value as SkyCondition;
              edit('sky condition', editShoot({ condition }));
            }}
          >
            {SKY_CONDITIONS.map((condition) => (
              <option key={condition} value={condition}>
                {CONDITION_NAMES[condition]}
              </option>
            ))}
          </select>
        </label>
        <StepButtons />
        <ThemeSwitch />
      </div>
      {sheetOpen ? (
        <Suspense>
          <ShootSheet onClose={() => setSheetOpen(false)} onOpenShoot={onOpenShoot} />
        </Suspense>
      ) : null}
    </header>
  );
}

function StepButtons(): ReactNode {
  const { undo, redo } = useSteps();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      const typing = event.target instanceof Element && event.target.matches('input, textarea');
      if (typing || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
      event.preventDefault();
      if (event.shiftKey) redo();
      else undo();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  });
  return (
    <>
      <button type="button" aria-label="Undo" title="Undo (Ctrl Z)" data-undo onClick={undo}>
        ↶
      </button>
      <button type="button" aria-label="Redo" title="Redo (Ctrl Shift Z)" data-redo onClick={redo}>
        ↷
      </button>
    </>
  );
}

function ThemeSwitch(): ReactNode {
  const { repository } = useServices();
  const [dim, setDim] = useState(false);
  useEffect(() => {
    void repository.setting('theme').then((theme) => setDim(theme.ok && theme.value === 'dim'));
  }, [repository]);
  useEffect(() => {
    document.documentElement.dataset['theme'] = dim ? 'dim' : 'light';
  }, [dim]);
  return (
    <button
      type="button"
      data-theme-switch
      aria-pressed={dim}
      onClick={() => {
        void repository.saveSetting('theme', dim ? 'light' : 'dim');
        setDim(!dim);
      }}
    >
      {dim ? 'Light' : 'Dim'}
    </button>
  );
}
