/** The arrows of the house: who may import whom. Anything else, and every cycle, is an error. */
const rooms = {
  platform: [],
  people: ['platform'],
  journal: ['platform', 'people'],
  register: ['platform', 'people', 'journal'],
  provenance: ['platform', 'people', 'journal', 'register'],
  lineage: ['platform', 'people', 'journal', 'register', 'provenance'],
  match: ['platform', 'people', 'journal', 'register', 'provenance', 'lineage'],
  selling: ['platform', 'people', 'journal', 'register', 'provenance', 'lineage'],
  today: ['platform', 'people', 'register', 'provenance', 'selling'],
  exchange: ['platform', 'people', 'journal', 'register', 'provenance', 'lineage'],
};

const arrows = Object.entries(rooms).map(([room, others]) => ({
  name: `arrows-of-${room}`,
  severity: 'error',
  from: { path: `^api/${room}/` },
  to: { path: '^(api|client|seed-demo|tests)/', pathNot: `^api/(${[room, ...others].join('|')})/` },
}));

module.exports = {
  forbidden: [
    ...arrows,
    {
      name: 'kernel-stands-alone',
      severity: 'error',
      comment: 'The kernel is arithmetic: it knows no record, no database, no framework, no library.',
      from: { path: '^api/lineage/kernel/' },
      to: { pathNot: '^api/lineage/kernel/' },
    },
    {
      name: 'shared-stands-alone',
      severity: 'error',
      from: { path: '^shared/' },
      to: { path: '^(api|client|seed-demo|migrations|tests)/' },
    },
    {
      name: 'client-speaks-http',
      severity: 'error',
      from: { path: '^client/' },
      to: { path: '^(api|migrations|seed-demo|tests)/' },
    },
    { name: 'seed-writes-rows', severity: 'error', from: { path: '^seed-demo/' }, to: { path: '^api/(?!platform/)' } },
    { name: 'no-tests-in-the-product', severity: 'error', from: { pathNot: '^tests/' }, to: { path: '^tests/' } },
    {
      name: 'no-cycles',
      severity: 'error',
      from: {},
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'no-unresolvable',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^(\\$|\\./\\$types$|@fontsource|topojson-specification$|world-atlas/)' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      extensions: ['.ts', '.js', '.svelte', '.json'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'svelte'],
    },
  },
};
