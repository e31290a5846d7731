// Reads lines of a rig on standard input, prints for each token its text and its last scope. Arguments: folder of node_modules, grammar.
const fs = require("fs");
const path = require("path");
const [modules, grammarPath] = process.argv.slice(2);
const load = (name) => require(require.resolve(name, { paths: [modules] }));
const oniguruma = load("vscode-oniguruma");
const { Registry, parseRawGrammar, INITIAL } = load("vscode-textmate");
const wasm = fs.readFileSync(path.join(modules, "node_modules/vscode-oniguruma/release/onig.wasm")).buffer;

oniguruma.loadWASM(wasm).then(async () => {
  const registry = new Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => parseRawGrammar(fs.readFileSync(grammarPath, "utf8"), grammarPath),
  });
  const grammar = await registry.loadGrammar("source.rig");
  let state = INITIAL;
  const told = [];
  for (const line of fs.readFileSync(0, "utf8").split("\n")) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, state);
    state = ruleStack;
    told.push(tokens.map((each) => [line.slice(each.startIndex, each.endIndex), each.scopes.at(-1)]));
  }
  console.log(JSON.stringify(told));
});
