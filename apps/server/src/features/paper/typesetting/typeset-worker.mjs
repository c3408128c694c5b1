// Entry of the worker that typesets: a compile of many pages holds up its thread. Plain JavaScript, so that it runs
// from the source as from the bundle.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { parentPort, workerData } from 'node:worker_threads';
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

// A set document holds megabytes outside the heap that the collector does not see: it is told after each.
setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc');

const { fontFiles, workspace } = workerData;
const compiler = NodeCompiler.create({
  workspace,
  fontArgs: [{ fontBlobs: fontFiles.map((/** @type {string} */ path) => readFileSync(path)) }],
});

/** @param {unknown} failure */
const described = (failure) => {
  const diagnostics = failure ? compiler.fetchDiagnostics(/** @type {any} */ (failure)) : [];
  return diagnostics.map((each) => each.message ?? JSON.stringify(each)).join('; ');
};

parentPort?.on('message', ({ id, template, data, pictures, tagged }) => {
  try {
    for (const { path, bytes } of pictures) compiler.mapShadow(join(workspace, path), Buffer.from(bytes));
    const compiled = compiler.compile({ mainFileContent: template, inputs: { data } });
    const document = compiled.result;
    if (!document) throw new Error(`Typesetting failed: ${described(compiled.takeDiagnostics())}`);
    const pdf = compiler.pdf(document, { pdfTags: tagged });
    const bytes = new Uint8Array(pdf);
    parentPort?.postMessage({ id, bytes, pages: document.numOfPages }, [bytes.buffer]);
  } catch (error) {
    parentPort?.postMessage({ id, failure: error instanceof Error ? error.message : String(error) });
  } finally {
    // Results of one document are of no use to the next, and would pile up.
    compiler.resetShadow();
    compiler.evictCache(0);
    setImmediate(collectGarbage);
  }
});
