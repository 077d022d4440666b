import { parseSync, Visitor } from 'vite';

/** A file under src as the architecture rules see it. */
export type SourceFile = {
  /** From src, with forward slashes: 'core/units/angle.ts'. */
  readonly path: string;
  /** Every import, export-from, dynamic import, type import and new URL(…, import.meta.url). */
  readonly imports: readonly Specifier[];
  /** Uses of clock, chance and Luxon's settings. */
  readonly impurities: readonly string[];
  readonly hasDefaultExport: boolean;
  /** Lines that are neither blank nor comment only. */
  readonly codeLines: number;
};

/** As written, without a '?url' or the like; null where it is not a plain string. */
export type Specifier = string | null;

export const readSource = (path: string, text: string): SourceFile => {
  const { program, module, comments, errors } = parseSync(path, text);
  if (errors[0] !== undefined) throw new Error(`${path}: ${errors[0].message}`);
  const imports: Specifier[] = [];
  const impurities: string[] = [];
  const add = (specifier: string | null): void => {
    imports.push(specifier?.replace(/\?.*$/, '') ?? null);
  };
  for (const { moduleRequest, entries } of module.staticImports) {
    add(moduleRequest.value);
    for (const { importName, localName } of entries) {
      if (importName.name === 'DateTime' && localName.value !== 'DateTime') {
        impurities.push('DateTime under another name');
      }
    }
  }
  for (const { moduleRequest } of module.staticExports.flatMap(({ entries }) => entries)) {
    if (moduleRequest !== null) add(moduleRequest.value);
  }
  new Visitor({
    ImportExpression: ({ source }) => add(literal(source)),
    TSImportType: ({ source }) => add(source.value),
    NewExpression: ({ callee, arguments: args }) => {
      if (callee.type !== 'Identifier') return;
      if (callee.name === 'Date' && args.length === 0) impurities.push('new Date()');
      if (callee.name === 'URL' && args[1] !== undefined && isImportMetaUrl(args[1])) {
        add(literal(args[0]));
      }
    },
    CallExpression: ({ callee }) => {
      if (callee.type === 'Identifier' && callee.name === 'Date') impurities.push('Date()');
    },
    MemberExpression: ({ object, property, computed }) => {
      if (object.type !== 'Identifier') return;
      const member = computed ? literal(property) : 'name' in property ? property.name : null;
      const name = `${object.name}.${String(member)}`;
      if (IMPURE_MEMBERS.includes(name)) impurities.push(name);
    },
    Identifier: ({ name }) => {
      if (name === 'Settings') impurities.push(name);
    },
  }).visit(program);
  return {
    path,
    imports,
    impurities: [...new Set(impurities)],
    hasDefaultExport: module.staticExports.some(({ entries }) =>
      entries.some(({ exportName }) => exportName.kind === 'Default'),
    ),
    codeLines: countCodeLines(text, comments),
  };
};

const IMPURE_MEMBERS: readonly string[] = [
  'Date.now',
  'Math.random',
  'DateTime.now',
  'DateTime.local',
  'performance.now',
  'crypto.randomUUID',
  'crypto.getRandomValues',
];

const literal = (node: unknown): string | null =>
  typeof node === 'object' && node !== null && 'value' in node && typeof node.value === 'string'
    ? node.value
    : null;

const isImportMetaUrl = (node: { readonly type: string }): boolean =>
  'object' in node &&
  typeof node.object === 'object' &&
  node.object !== null &&
  'type' in node.object &&
  node.object.type === 'MetaProperty';

const countCodeLines = (
  text: string,
  comments: readonly { readonly start: number; readonly end: number }[],
): number => {
  let code = '';
  let at = 0;
  for (const { start, end } of comments) {
    code += text.slice(at, start) + text.slice(start, end).replace(/[^\n]/g, ' ');
    at = end;
  }
  return (code + text.slice(at)).split('\n').filter((line) => line.trim() !== '').length;
};
