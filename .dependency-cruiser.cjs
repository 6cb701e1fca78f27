// Which part of the program may use which. DEVELOPERS.md draws it; tests/structure/directions.test.ts holds the code to it.
// Everything not listed is forbidden, so a new folder has to be placed here before it can import anything.

/** Folder under src: the folders it may use, besides itself. */
const mayUse = {
    // what somebody wrote, made fit for the place it goes to
    text: [],
    quantity: [],
    data: ['quantity'],
    // points, lines and polygons of whole numbers: knows no wood
    plane: ['quantity'],
    // a ceiling from its plan: walls, lines, how they meet, every piece
    arrangement: ['plane', 'quantity'],
    provenance: ['quantity', 'data'],
    findings: ['provenance', 'quantity', 'data'],
    job: ['findings', 'provenance', 'quantity', 'data'],
    ceiling: ['arrangement', 'plane', 'job', 'findings', 'provenance', 'quantity', 'data'],
    takeoff: ['arrangement', 'plane', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // the ceiling as it was surveyed, and what it leaves of every side
    survey: ['takeoff', 'plane', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // what the tape said: how every dimension is known, what is still to measure, what a wrong reading would explain, walls that are not straight
    measure: ['cutting', 'takeoff', 'plane', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    cutting: ['takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // the contract to date, and what a bill asks for
    billing: ['job', 'findings', 'provenance', 'quantity', 'data'],
    // what has no rate is what the estimate finds none for
    rules: ['putup', 'billing', 'measure', 'survey', 'estimate', 'dryfit', 'cutting', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    drawing: ['putup', 'text', 'measure', 'survey', 'dryfit', 'sawing', 'cutting', 'takeoff', 'ceiling', 'plane', 'job', 'findings', 'provenance', 'quantity', 'data'],
    dryfit: ['arrangement', 'plane', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // what goes up when, and on which way every piece gets to its place
    putup: ['estimate', 'cutting', 'dryfit', 'arrangement', 'plane', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // boards in the order and at the settings of the saw
    sawing: ['cutting', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    estimate: ['cutting', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    pipeline: ['putup', 'measure', 'survey', 'estimate', 'sawing', 'dryfit', 'cutting', 'rules', 'drawing', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // what is otherwise in another state of a house
    changes: ['dryfit', 'pipeline', 'estimate', 'cutting', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    report: ['putup', 'text', 'billing', 'measure', 'survey', 'changes', 'pipeline', 'estimate', 'sawing', 'dryfit', 'cutting', 'rules', 'drawing', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // other programs' formats, as bytes: DXF, glTF, IFC, PDF
    exports: ['putup', 'text', 'billing', 'measure', 'survey', 'changes', 'report', 'pipeline', 'estimate', 'sawing', 'dryfit', 'cutting', 'rules', 'drawing', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // what a pane shows and prints, as markup; runs in the server, the command line and the pane itself
    pages: ['putup', 'text', 'billing', 'measure', 'survey', 'changes', 'exports', 'report', 'pipeline', 'estimate', 'sawing', 'dryfit', 'cutting', 'rules', 'drawing', 'takeoff', 'ceiling', 'job', 'findings', 'provenance', 'quantity', 'data'],
    // what the text says, and nothing of what follows from it
    language: ['text', 'job', 'findings', 'provenance', 'quantity', 'data'],
};
// other grids for a room
mayUse.suggest = ['putup', ...mayUse.changes, 'dryfit', 'rules'];
for (const name of ['report', 'exports', 'pages']) mayUse[name].push('suggest');
// groups and words: knows nothing of ceilings, and everybody may use it
mayUse.plain = [];
for (const [name, used] of Object.entries(mayUse)) if (name !== 'plain') used.push('plain');
const adapters = ['cli', 'git', 'server', 'extension', 'panes', 'worker'];
const core = Object.keys(mayUse).filter(name => name !== 'language');

// the editor's own module exists only inside the editor; its types stand in for it
const editor = '^vscode$|node_modules/@types/vscode/';
const folder = names => `^src/(${names.join('|')})/`;

module.exports = {
    forbidden: [
        { name: 'no-cycles', comment: 'of types neither: what is used is said below whoever uses it', severity: 'error', from: {}, to: { circular: true } },
        { name: 'nothing-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: editor } },
        {
            name: 'place-the-folder', comment: 'a folder under src that has no place in the directions yet', severity: 'error',
            from: { path: '^src/[^/]+/', pathNot: folder([...Object.keys(mayUse), ...adapters, 'build']) }, to: {},
        },
        ...Object.entries(mayUse).map(([name, used]) => ({
            name: `${name}-directions`, severity: 'error',
            from: { path: folder([name]) }, to: { path: '^src/[^/]+/', pathNot: folder([name, ...used]) },
        })),
        {
            name: 'core-is-pure', comment: 'no I/O, no editor, no language framework: plain data in, plain data out', severity: 'error',
            from: { path: folder(core) }, to: { path: [editor, '^(langium|chevrotain|vscode-)', 'node_modules/(langium|chevrotain|vscode-[^/]+|chokidar|commander)/'] },
        },
        { name: 'no-node-in-the-core', severity: 'error', from: { path: folder([...core, 'language']) }, to: { dependencyTypes: ['core'] } },
        {
            name: 'no-editor-in-the-language', comment: 'the protocol\'s plain types are allowed, its connections and the editor are not', severity: 'error',
            from: { path: folder(['language']) }, to: { path: [editor, 'node_modules/vscode-(languageclient|languageserver)/.*node'] },
        },
        // the extension runs in the editor and must stay thin: it shares the names of the messages with the server, and the text of a first job, no more
        { name: 'thin-extension', severity: 'error', from: { path: folder(['extension']) }, to: { path: '^src/', pathNot: ['^src/extension/', '^src/git/', '^src/server/messages\\.ts$', '^src/panes/messages\\.ts$', '\\.coffer$'] } },
        // what runs inside a pane shows what it is sent
        { name: 'thin-panes', severity: 'error', from: { path: folder(['panes']) }, to: { path: '^src/', pathNot: ['^src/panes/', '^src/pages/', '^src/drawing/', '^src/text/', '^src/provenance/', '^src/quantity/', '^src/takeoff/model\\.ts$', '^src/server/messages\\.ts$'] } },
        { name: 'git-directions', comment: 'asks the git of the machine, and knows of nothing else', severity: 'error', from: { path: folder(['git']) }, to: { path: '^src/', pathNot: '^src/git/' } },
        { name: 'server-directions', severity: 'error', from: { path: folder(['server']) }, to: { path: folder(['cli', 'extension', 'build']) } },
        {
            name: 'cli-directions', comment: 'the one exception is the command that becomes the server', severity: 'error',
            from: { path: folder(['cli']) }, to: { path: folder(['server', 'extension', 'build']), pathNot: '^src/server/main\\.ts$' },
        },
        {
            name: 'browser-has-no-node', comment: 'but for the ways in for Node, server and extension run in a browser too', severity: 'error',
            from: { path: folder(['server', 'extension']), pathNot: '^src/(server/main|extension/(main|stored-files))\\.ts$' },
            to: { path: '^src/git/|(^(node:|langium/node|vscode-languageserver/node|vscode-languageclient/node))|node_modules/(langium/(lib|src)/node/|vscode-language(server|client)/node\\.)' },
        },
        { name: 'only-declared-packages', severity: 'error', from: { path: '^src/', pathNot: '^src/build/' }, to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], dependencyTypesNot: ['type-only'], pathNot: ['\\.woff2?$', 'node_modules/@types/'] } },
    ],
    options: {
        doNotFollow: { path: 'node_modules' },
        exclude: { path: '^src/build/' },
        tsPreCompilationDeps: true, // a type imported the wrong way round is a wrong direction too
        tsConfig: { fileName: 'tsconfig.json' },
        enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'require', 'node', 'default', 'types'], mainFields: ['module', 'main', 'types'] },
    },
};
