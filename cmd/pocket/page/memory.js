// Stands in for folder.js: files in memory alone, lost with the page.
"use strict";

(() => {
  const nodes = new Map([["/", { dir: true }]]), open = new Map();
  let next = 10, inode = 2;
  const fault = (code) => Object.assign(new Error(code), { code });
  const norm = (p) => "/" + p.split("/").filter((x) => x && x !== ".").join("/");
  const get = (p) => { const n = nodes.get(norm(p)); if (!n) throw fault("ENOENT"); return n; };
  const stat = (n) => ({ dev: 1, ino: n.ino ??= inode++, mode: n.dir ? 0o40700 : 0o100600, nlink: 1, uid: 0, gid: 0, rdev: 0, size: n.dir ? 0 : n.data.length, blksize: 4096, blocks: 0, atimeMs: n.t ?? 0, mtimeMs: n.t ?? 0, ctimeMs: n.t ?? 0, isDirectory: () => !!n.dir });
  const did = (f) => (...a) => { const cb = a.pop(); let r; try { r = f(...a); } catch (e) { return cb(e); } cb(null, r); };
  const old = globalThis.fs;
  const O = { O_WRONLY: 1, O_RDWR: 2, O_CREAT: 64, O_EXCL: 128, O_TRUNC: 512, O_APPEND: 1024, O_DIRECTORY: 65536 };
  Object.assign(old, {
    constants: O,
    open: did((p, flags) => {
      p = norm(p);
      let n = nodes.get(p);
      if (!n && !(flags & O.O_CREAT)) throw fault("ENOENT");
      if (n && flags & O.O_CREAT && flags & O.O_EXCL) throw fault("EEXIST");
      if (!n) nodes.set(p, n = { data: new Uint8Array(0), t: Date.now() });
      if (flags & O.O_TRUNC) n.data = new Uint8Array(0);
      open.set(next, { n, at: 0, append: flags & O.O_APPEND });
      return next++;
    }),
    close: did((fd) => { open.delete(fd); }),
    read: (fd, buf, off, len, pos, cb) => { const f = open.get(fd), from = pos ?? f.at, part = f.n.data.subarray(from, from + len); buf.set(part, off); if (pos === null) f.at += part.length; cb(null, part.length); },
    write: (fd, buf, off, len, pos, cb) => {
      if (fd < 3) { cb(null, old.writeSync(fd, buf.subarray(off, off + len))); return; }
      const f = open.get(fd), from = f.append ? f.n.data.length : pos ?? f.at, d = new Uint8Array(Math.max(f.n.data.length, from + len));
      d.set(f.n.data); d.set(buf.subarray(off, off + len), from); f.n.data = d; f.n.t = Date.now(); if (pos === null) f.at = from + len;
      cb(null, len);
    },
    fsync: did(() => {}), chmod: did(() => {}), fchmod: did(() => {}), utimes: did(() => {}),
    ftruncate: did((fd, n) => { open.get(fd).n.data = open.get(fd).n.data.slice(0, n); }),
    fstat: did((fd) => stat(open.get(fd).n)), stat: did((p) => stat(get(p))), lstat: did((p) => stat(get(p))),
    mkdir: did((p) => { if (nodes.has(norm(p))) throw fault("EEXIST"); nodes.set(norm(p), { dir: true }); }),
    rename: did((a, b) => { nodes.set(norm(b), get(a)); nodes.delete(norm(a)); }),
    link: did((a, b) => { if (nodes.has(norm(b))) throw fault("EEXIST"); nodes.set(norm(b), get(a)); }),
    unlink: did((p) => { get(p); nodes.delete(norm(p)); }), rmdir: did((p) => { get(p); nodes.delete(norm(p)); }),
    readdir: did((p) => { get(p); const base = norm(p).replace(/\/?$/, "/"); return [...nodes.keys()].filter((k) => k !== "/" && k.startsWith(base) && !k.slice(base.length).includes("/")).map((k) => k.slice(base.length)); }),
  });
  globalThis.pocketFolder = { ready: Promise.resolve({ durable: false }) };
})();
