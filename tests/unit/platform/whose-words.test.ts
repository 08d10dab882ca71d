import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { whoseWords } from '../../../api/platform/say.ts';

const api = fileURLToPath(new URL('../../../api/', import.meta.url));

/** Fields of requests that are asked with and never come back as they were written: searches and names of records. */
const asked = new Set([
  ...['q', 'after', 'kind'],
  ...['a', 'b', 'individual', 'individualId', 'male', 'female', 'sire', 'dam', 'number', 'commonAncestor'],
  ...['individuals', 'animals', 'give', 'take', 'also', 'keptTogether', 'nativeRange'],
]);

/** Decorators of the fields in which people write. */
const writing = ['TextField', 'TextListField'];

/** The fields in which people write, each with the request that has it. */
function writtenFields(): Map<string, string> {
  const found = new Map<string, string>();
  for (const file of readdirSync(api, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'))) {
    const source = ts.createSourceFile(file, readFileSync(api + file, 'utf8'), ts.ScriptTarget.Latest, true);
    const visit = (node: ts.Node): void => {
      if (ts.isPropertyDeclaration(node) && (ts.getDecorators(node) ?? []).some(isWriting))
        found.set(
          node.name.getText(),
          `${file}: ${ts.isClassDeclaration(node.parent) ? (node.parent.name?.text ?? '') : ''}`,
        );
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

const isWriting = ({ expression }: ts.Decorator): boolean =>
  ts.isCallExpression(expression) && writing.includes(expression.expression.getText());

describe('what people write', () => {
  const fields = writtenFields();

  it('is found in the requests', () => {
    expect([...fields.keys()]).toEqual(expect.arrayContaining(['notes', 'reason', 'name', 'text', 'permitReferences']));
    expect([...asked].filter((field) => !fields.has(field))).toEqual([]);
  });

  it('is told as it is written, whatever the field: one that is new has to be named in say.ts, or is only asked with', () => {
    const unguarded = [...fields].filter(([field]) => !asked.has(field) && whoseWords(field) === 'service');
    expect(unguarded).toEqual([]);
  });
});
