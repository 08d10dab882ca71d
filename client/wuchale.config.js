import { adapter as svelte } from '@wuchale/svelte';
import { parseScript, Transformer } from 'wuchale/adapter-vanilla';

/*
 * The catalogue of words: every text that a reader sees or hears is found in the source, where it stands in English, and kept in
 * `src/lib/words/catalogue/<language>.po` beside its translation. What is code and what is for readers is decided here.
 */

/** Attributes whose text is seen or heard; the text of every other attribute is code. */
const readAttributes = new Set([
  ...[
    'label',
    'title',
    'placeholder',
    'alt',
    'hint',
    'words',
    'beside',
    'caption',
    'heading',
    'what',
    'verb',
    'name',
    'summary',
    'caution',
  ],
  ...['aria-label', 'aria-description', 'aria-roledescription', 'data-name', 'data-folded', 'data-label'],
]);

/** Calls that take names and addresses, no words. */
const takesCode = new RegExp(
  '^(api\\..*|session\\.may|depends|kept\\..*|goto|fetch|console\\..*|said|list|resolve|request\\.setRequestHeader|' +
    '.*\\.(querySelector|querySelectorAll|closest|matches|getElementById|addEventListener|setAttribute|getAttribute|removeAttribute|' +
    'createElement|createElementNS|startsWith|endsWith|includes|split|has|get|set|append|delete|test|fillText|localeCompare))$',
);

/** Names of keys as events tell them: they are compared, not shown. */
const keyNames =
  /^(Enter|Escape|Space|Tab|Home|End|Delete|Backspace|Shift|Control|Alt|Meta|(Arrow|Page)(Up|Down|Left|Right))$/;

/** Capitalised words and phrases that are code all the same. */
const codeWords = /^(From|To|Bytes|Sphere|Internal Error|\(?(min|max)-width: .*|\(?prefers-.*)$/;

/** Addresses, selectors, JSON, markup and attributes, fonts and variables of style sheets. */
const looksLikeCode = /^[/.&?@[^{<]|^\S*[/=_<>{}()\\]\S*$|\w="|\d+px |^var\(/;

/** A sentence, a phrase or a capitalised word is for readers; a single lower-case word only where the source says `word('…')`. */
function isForReaders({ msgStr, details: { scope, element, attribute, call } }) {
  const text = msgStr.join('\n');
  // what a template leaves out is told as # or {0}, nested markup as <0>
  const letters = text.replace(/#|\{\d+\}|<\/?\d+\/?>/g, ' ').trim();
  if (!/\p{L}{2}/u.test(letters) && !(scope === 'markup' && /\p{L}/u.test(letters))) return false;
  if (element === 'style' || element === 'script' || element === 'meta') return false;
  if (scope === 'markup') return true;
  if (attribute !== undefined && !readAttributes.has(attribute)) return false;
  if (scope === 'attribute' || call === 'word') return true;
  if (call !== undefined && takesCode.test(call)) return false;
  if (keyNames.test(letters) || codeWords.test(letters) || looksLikeCode.test(text)) return false;
  return /\s/.test(text.trim()) || (text === letters && /^\p{Lu}\p{Ll}+[.…?!:]?$/u.test(letters));
}

const heuristic = (message) => (isForReaders(message) ? 'message' : false);

/** The language is settled before the first page is drawn; choosing another loads the page anew. So no text needs to be watched. */
const runtime = { initReactive: ({ funcName }) => (funcName == null ? false : null), useReactive: false };

/** Calls whose list of forms is a noun in one and in many. */
const patterns = ['counted', 'countedInWords'].map((name) => ({ name, args: ['other', 'message', 'pluralFunc'] }));

/** Takes up what the library passes over: words of a module itself, of the fields of a class, and of an error thrown. */
class ModuleTransformer extends Transformer {
  #visitMethods = this.visitClassDeclaration;
  visitClassDeclaration = (node) => [
    ...this.#visitMethods(node),
    ...node.body.body.flatMap((part) =>
      part.type === 'PropertyDefinition' && part.value ? this.visit(part.value) : [],
    ),
  ];
  visitThrowStatement = (node) => this.visit(node.argument);
  visitTSNonNullExpression = (node) => this.visit(node.expression);
  transform = () => {
    const [tree, comments] = parseScript(this.content);
    this.comments = comments;
    const found = this.visit(tree);
    const start = this.getRealBodyStart(tree.body) ?? 0;
    if (found.length > 0) this.mstr.appendRight(start, this.initRuntime());
    return this.finalize(found, start);
  };
}

// Each file carries its own words, so that a page loads those that it shows.
const components = svelte({
  heuristic,
  runtime,
  patterns,
  loader: 'custom',
  granularLoad: true,
  bundleLoad: true,
  files: {
    include: ['src/**/*.svelte', 'src/**/*.ts', '../shared/date-words.ts'],
    ignore: [
      '**/*.d.ts',
      'src/checker/**',
      'src/lib/words/*',
      'src/service-worker/**',
      'src/lib/exchange/mapping/{cell-values,date-order,heading-words}.ts',
      'src/lib/charts/ancestors/{ancestor-layout,row-layout,chart-items}.ts',
      'src/lib/charts/descendants/{descendant-layout,family-streams,family-times}.ts',
    ],
  },
});

export default {
  locales: ['en', 'es'],
  localesDir: 'src/lib/words/catalogue',
  ai: null,
  logLevel: 'error',
  adapters: {
    words: {
      ...components,
      transform: (file) =>
        file.filename.endsWith('.svelte')
          ? components.transform(file)
          : new ModuleTransformer(
              file.content,
              file.filename,
              file.index,
              heuristic,
              patterns,
              file.expr,
              runtime,
              file.matchUrl,
            ).transform(),
    },
  },
};
