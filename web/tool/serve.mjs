// Serves one folder to this computer alone: serve.mjs FOLDER PORT (0 picks a free one).
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { extname, join, normalize } from 'node:path';

const TYPES = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.wasm': 'application/wasm', '.svg': 'image/svg+xml', '.webmanifest': 'application/manifest+json', '.png': 'image/png',
};

/** A server of `folder` on the loopback address; resolves once it listens. */
export function serve(folder, port) {
  const server = createServer(async (request, response) => {
    try {
      const path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname);
      const name = normalize(path.endsWith('/') ? path + 'index.html' : path);
      const body = await readFile(join(folder, name));
      response.writeHead(200, { 'content-type': TYPES[extname(name)] ?? 'application/octet-stream', 'cache-control': 'no-cache' });
      response.end(body);
    } catch {
      response.writeHead(404, { 'content-type': 'text/plain' });
      response.end('not here\n');
    }
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve(server));
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder, port] = process.argv.slice(2);
  const server = await serve(folder, Number(port)).catch((error) => {
    if (error.code !== 'EADDRINUSE') throw error;
    return serve(folder, 0);
  });
  console.log(`Handturn is at http://127.0.0.1:${server.address().port}/ (Ctrl+C stops it)`);
}
