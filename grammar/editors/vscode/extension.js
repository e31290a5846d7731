// Starts `rigc lsp` for the rigs of this window and ends it with the window. Needs rigc with its extra: pip install 'rigc[lsp]'.
"use strict";

const { workspace } = require("vscode");
const { LanguageClient } = require("vscode-languageclient/node");

let client;

function activate() {
  const [command, ...args] = workspace.getConfiguration("rig").get("command");
  client = new LanguageClient(
    "rig",
    "Rig",
    { command, args },
    { documentSelector: [{ scheme: "file", language: "rig" }] },
  );
  return client.start();
}

function deactivate() {
  return client?.stop();
}

module.exports = { activate, deactivate };
