export default { output: { path: "generated", importFileExtension: ".js" } };
