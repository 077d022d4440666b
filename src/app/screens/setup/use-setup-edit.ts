import { editLight, editSetup } from '../../../core/plan/edits.ts';
import type { Light, Setup } from '../../../core/plan/setup-schema.ts';
import { useEditShoot } from '../../state/documents.tsx';

type Fields<Entry> = { -readonly [Key in keyof Entry]?: Entry[Key] };

/** Writes fields of a setup; the label is what undo will call it. */
export function useSetupEdit(setupId: string): (label: string, fields: Fields<Setup>) => void {
  const edit = useEditShoot();
  return (label, fields) => edit(label, editSetup(setupId, fields));
}

export function useLightEdit(
  setupId: string,
  lightId: string,
): (label: string, fields: Fields<Light>) => void {
  const edit = useEditShoot();
  return (label, fields) => edit(label, editLight(setupId, lightId, fields));
}
