import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { keyOf } from '../../api/platform/say.ts';
import * as vocabulary from '../../shared/vocabulary.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** A place in the sources of the service. */
export interface Place {
  readonly file: string;
  readonly line: number;
}

/** What the service says: each sentence, as the catalogue calls it, and where it stands; and refusals in words that nothing said. */
export interface ServiceSentences {
  readonly said: ReadonlyMap<string, readonly string[]>;
  readonly unsaid: readonly (Place & { readonly text: string })[];
}

/** Single words that stand in holes of sentences: those of the vocabulary, kinds of records and units. */
const words = [
  ...vocabulary.sexes,
  ...vocabulary.statuses,
  ...vocabulary.observationKinds,
  ...vocabulary.photographViews,
  ...vocabulary.lossCauses,
  ...vocabulary.traitNames,
  ...vocabulary.flagCodes,
  ...['sire', 'dam', 'parent', 'sires', 'dams', 'either'],
  ...[
    'animal',
    'clutch',
    'source',
    'species',
    'line',
    'keeper',
    'pairing',
    'claim',
    'evidence',
    'photograph',
    'import',
  ],
  ...[
    'remark',
    'file',
    'club',
    'transfer',
    'token',
    'link',
    'sheet',
    'key',
    'merge',
    'merging',
    'plan',
    'individual',
    'observation',
    'individuals',
    'sources',
    'lines',
    'claims',
  ],
  ...['day', 'days', 'month', 'months', 'year', 'years', 'egg', 'eggs', 'mm', 'ancestor', 'ancestors', 'clutches'],
  ...[
    'documented',
    'corroborated',
    'stated',
    'disputed',
    'accepted',
    'declined',
    'withdrew',
    'code',
    'name',
    'sex',
    'status',
  ],
];

/** Reads the sources of the service. */
export function readServiceSentences(): ServiceSentences {
  const said = new Map<string, string[]>(words.map((word) => [word, ['shared/vocabulary.ts']]));
  const unsaid: (Place & { text: string })[] = [];
  for (const file of sourcesIn('api')) {
    const source = ts.createSourceFile(file, readFileSync(join(root, file), 'utf8'), ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'say') {
        const key = keyOf(partsOf(node.template));
        said.set(key, [...(said.get(key) ?? []), file]);
      }
      if (ts.isNewExpression(node) && /Problem$/.test(node.expression.getText()))
        for (const argument of node.arguments ?? []) {
          const text = literalText(argument);
          if (text !== undefined && /\s/.test(text))
            unsaid.push({ file, line: source.getLineAndCharacterOfPosition(argument.getStart()).line + 1, text });
        }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { said, unsaid };
}

function sourcesIn(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .sort();
}

function partsOf(template: ts.TemplateLiteral): string[] {
  if (ts.isNoSubstitutionTemplateLiteral(template)) return [template.text];
  return [template.head.text, ...template.templateSpans.map((span) => span.literal.text)];
}

function literalText(node: ts.Node): string | undefined {
  if (ts.isStringLiteral(node)) return node.text;
  return ts.isTemplateLiteral(node) ? keyOf(partsOf(node)) : undefined;
}
