import { posix } from 'node:path';
import { EMPTY_NAMES, FOLDER_RULES, MAX_CODE_LINES, type FolderRule } from './import-rules.ts';
import type { SourceFile, Specifier } from './source-file.ts';

/** Everything in which the files break the architecture's rules, one sentence each. */
export const architectureProblems = (files: readonly SourceFile[]): readonly string[] => {
  const paths = new Set(files.map(({ path }) => path));
  return [
    ...files.flatMap((file) => [
      ...nameProblems(file.path),
      ...sizeProblems(file),
      ...(file.hasDefaultExport ? [`${file.path}: exports a default`] : []),
      ...(file.path.startsWith('core/')
        ? file.impurities.map((impurity) => `${file.path}: ${impurity} in the core`)
        : []),
      ...file.imports.flatMap((specifier) =>
        importProblem(file.path, specifier, paths).map((problem) => `${file.path}: ${problem}`),
      ),
    ]),
    ...cycleProblems(files),
  ];
};

const nameProblems = (path: string): readonly string[] => {
  const problems: string[] = [];
  const parts = path.split('/');
  const file = parts.at(-1) ?? '';
  const stem = file.replace(/(\.data|\.worker|\.d)?\.tsx?$/, '');
  if (stem === 'index') problems.push('named index');
  if ([...parts.slice(0, -1), stem].some((name) => EMPTY_NAMES.includes(name))) {
    problems.push('a name that says nothing of what is in it');
  }
  if (!KEBAB_NAME.test(stem) && !(file.endsWith('.tsx') && PASCAL_NAME.test(stem))) {
    problems.push('neither kebab-case nor, with .tsx, PascalCase');
  }
  return problems.map((problem) => `${path}: ${problem}`);
};

const KEBAB_NAME = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const PASCAL_NAME = /^([A-Z][a-z0-9]*)+$/;

const sizeProblems = ({ path, codeLines }: SourceFile): readonly string[] =>
  codeLines > MAX_CODE_LINES && !path.endsWith('.data.ts')
    ? [`${path}: ${codeLines} code lines, at most ${MAX_CODE_LINES} allowed`]
    : [];

const importProblem = (
  path: string,
  specifier: Specifier,
  paths: ReadonlySet<string>,
): readonly string[] => {
  const rule = ruleFor(posix.dirname(path));
  if (rule === null) return ['lies in no folder of the import table'];
  if (specifier === null) return ['imports something that is not a plain string'];
  if (!specifier.startsWith('.')) {
    const allowed = [...rule.packages, ...(rule.packagesByFile?.[posix.basename(path)] ?? [])];
    return allowed.includes(specifier) || allowed.some((name) => isStyleOf(name, specifier))
      ? []
      : [`package ${specifier} is not allowed here`];
  }
  const target = posix.join(posix.dirname(path), specifier);
  if (target.startsWith('..')) return [`${specifier} leads out of src`];
  if (!isAsset(target) && !paths.has(target)) return [`${specifier} is no file (.ts or .tsx?)`];
  const targetRule = ruleFor(posix.dirname(target));
  if (targetRule === null) return [`${specifier} lies in no folder of the import table`];
  const own = folderOf(path, rule) === folderOf(target, targetRule);
  const allowed = rule.mayImport.some((folder) => target.startsWith(`${folder}/`));
  return own || allowed ? [] : [`${specifier} is not allowed here`];
};

const isStyleOf = (name: string, specifier: string): boolean =>
  specifier.startsWith(`${name}/`) && specifier.endsWith('.css');

const isAsset = (target: string): boolean => /\.(css|json|svg|png|woff2)$/.test(target);

const ruleFor = (folder: string): FolderRule | null => {
  const name = folder === '.' ? '' : folder;
  return (
    FOLDER_RULES.filter((rule) => matches(rule, name)).toSorted(
      (a, b) => b.folder.length - a.folder.length,
    )[0] ?? null
  );
};

const matches = ({ folder }: FolderRule, name: string): boolean => {
  if (folder === '') return name === '';
  const parts = name.split('/');
  return folder.split('/').every((part, at) => part === parts[at] || (part === '*' && at in parts));
};

/** The folder of the table that a file lies in, a * filled in. */
const folderOf = (path: string, { folder }: FolderRule): string =>
  folder === '' ? '' : path.split('/').slice(0, folder.split('/').length).join('/');

const cycleProblems = (files: readonly SourceFile[]): readonly string[] => {
  const targets = new Map(
    files.map(({ path, imports }) => [
      path,
      imports.flatMap((specifier) =>
        specifier?.startsWith('.') === true ? [posix.join(posix.dirname(path), specifier)] : [],
      ),
    ]),
  );
  const done = new Set<string>();
  const problems: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (trail.includes(path)) {
      problems.push(`cycle: ${[...trail.slice(trail.indexOf(path)), path].join(' → ')}`);
      return;
    }
    if (done.has(path)) return;
    for (const target of targets.get(path) ?? []) visit(target, [...trail, path]);
    done.add(path);
  };
  for (const path of targets.keys()) visit(path, []);
  return problems;
};
