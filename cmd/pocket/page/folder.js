// The files of the program, kept in the browser: globalThis.fs as Go's package syscall calls
// it, over one IndexedDB database. It stands in the worker.
//
// Whoever returns from fsync, rename, link, unlink or mkdir has it on the disk, or an error;
// each is one transaction, so that another page, or a crash, sees all of it or nothing. What
// was written is seen by others once it was synced or closed. An open file holds what stood
// in it when it was opened, even if another took its place.
//
// pocketFolder.ready tells, once it is known, whether files are kept: {durable, why}. Where
// the browser has no database they are kept in memory, until the page is closed.
"use strict";
(() => {
  const NAME = "coldseam", FILES = "files";
  const PATIENCE = 10000; // ms without an answer, after which a connection is taken for lost
  const READ = { mode: "readonly" };
  const WRITE = { mode: "readwrite", durability: "strict" };
  const LOOSE = { mode: "readwrite", durability: "relaxed" }; // for what need not outlive a loss of power yet
  const O = { O_RDONLY: 0, O_WRONLY: 1, O_RDWR: 2, O_CREAT: 64, O_EXCL: 128, O_TRUNC: 512, O_APPEND: 1024, O_DIRECTORY: 65536 };
  const FOLDER = 0o040000, FILE = 0o100000, MODE = 0o777;
  const EMPTY = new Uint8Array(0);

  const error = (code) => Object.assign(new Error(code), { code });

  // A file or a folder, which has no data, as it is stored. Its number stays when it is renamed.
  const fresh = (path, mode, data) => ({ path, mode, data, mtime: Date.now(), ino: Math.floor(Math.random() * 2 ** 52) });
  const start = () => ["/", "/book", "/tmp"].map((path) => fresh(path, FOLDER | 0o700, null));

  // The database: one connection, opened again where the browser closed it.

  let connection = null; // a promise

  function connect() {
    connection ??= new Promise((done, fail) => {
      const asked = indexedDB.open(NAME, 1);
      setTimeout(fail, PATIENCE, Error("the storage does not open"));
      asked.onupgradeneeded = () => {
        const files = asked.result.createObjectStore(FILES, { keyPath: "path" });
        for (const folder of start()) files.add(folder);
      };
      asked.onerror = () => fail(asked.error);
      asked.onsuccess = () => {
        asked.result.onversionchange = asked.result.onclose = disconnect;
        done(asked.result);
      };
    });
    return connection;
  }

  function disconnect() {
    connection?.then((db) => db.close(), () => {});
    connection = null;
  }

  // Once does some work in one transaction. What was read is there at once, while the
  // transaction still lives; what was written when it is complete.
  const once = (db, kind, work) => new Promise((done, fail) => {
    const tx = db.transaction(FILES, kind.mode, kind);
    const files = tx.objectStore(FILES);
    const ask = (request) => new Promise((ok, no) => {
      request.onsuccess = () => ok(request.result);
      request.onerror = () => no(request.error);
    });
    const clock = setTimeout(fail, PATIENCE, Error("the storage does not answer"));
    let result;
    tx.oncomplete = () => { clearTimeout(clock); done(result); };
    tx.onabort = () => { clearTimeout(clock); fail(tx.error ?? Error("the storage was closed")); };
    work({
      get: (path) => ask(files.get(path)),
      under: (prefix) => ask(files.getAll(IDBKeyRange.bound(prefix, prefix + "\uffff"))),
      put: (file) => ask(files.put(file)),
      remove: (path) => ask(files.delete(path)),
    }).then((r) => {
      result = r;
      if (kind === READ) done(r);
    }, (e) => {
      fail(e);
      try { tx.abort(); } catch { /* it is aborted already */ }
    });
  });

  // Memory in the place of the database: one work after the other.

  let memory = null, turn = Promise.resolve();

  function inMemory(work) {
    const mine = turn.then(() => work({
      get: async (path) => memory.get(path),
      under: async (prefix) => [...memory.values()].filter((f) => f.path.startsWith(prefix)),
      put: async (file) => memory.set(file.path, file),
      remove: async (path) => memory.delete(path),
    }));
    turn = mine.catch(() => {});
    return mine;
  }

  const known = (e) => /^E[A-Z]+$/.test(e?.code); // an answer of ours, no failure of the browser

  // Transact does some work, once more where the connection was lost: as nobody knows then
  // whether the work was done, each must bear to be done twice.
  async function transact(kind, work) {
    if (memory) return inMemory(work);
    for (let tries = 1; ; tries++) {
      try {
        return await once(await connect(), kind, work);
      } catch (e) {
        if (known(e)) throw e;
        if (e?.name === "QuotaExceededError") throw error("ENOSPC");
        disconnect();
        if (tries === 2) {
          console.warn("storage:", e);
          throw Object.assign(error("EIO"), { cause: e });
        }
      }
    }
  }

  const ready = (async () => {
    try {
      await transact(READ, (t) => needFolder(t, "/"));
      return { durable: true, why: "" };
    } catch ({ code, cause }) {
      memory = new Map(start().map((f) => [f.path, f]));
      return { durable: false, why: cause ? String(cause) : code };
    }
  })();

  // Paths.

  function resolve(...parts) {
    const out = [];
    for (const part of parts.join("/").split("/")) {
      if (part === "..") out.pop();
      else if (part !== "" && part !== ".") out.push(part);
    }
    return "/" + out.join("/");
  }

  const above = (path) => path.slice(0, path.lastIndexOf("/")) || "/";

  async function needFolder(t, path) {
    const folder = await t.get(path);
    if (!folder) throw error("ENOENT");
    if (folder.data) throw error("ENOTDIR");
  }

  async function need(t, path) {
    const file = await t.get(path);
    if (file) return file;
    await needFolder(t, above(path));
    throw error("ENOENT");
  }

  // A folder just listed, with its files, while the transaction that read it lives: none that
  // writes can begin before it ends, so what it holds is what is stored. The program reads
  // all pages of a book without going back to the browser in between, and so in one.
  let listed = null;

  function find(path) {
    if (listed?.path !== above(path)) return transact(READ, (t) => need(t, path));
    const file = listed.files.get(path);
    if (!file) throw error("ENOENT");
    return file;
  }

  const then = (value, use) => value instanceof Promise ? value.then(use) : use(value);

  const change = (path, how) => transact(WRITE, async (t) => {
    const file = await need(t, path);
    await t.put({ ...file, ...how(file) });
  });

  // Open files.

  const open = new Map();
  let last = 2; // 0 to 2 are the standard ones

  function opened(file, flags) {
    const writes = flags & (O.O_WRONLY | O.O_RDWR);
    if (!file.data && writes) throw error("EISDIR");
    if (file.data && flags & O.O_DIRECTORY) throw error("ENOTDIR");
    const { path, ino, mode, mtime, data } = file;
    open.set(++last, { path, ino, mode, mtime, data, kept: data, at: 0, flags, writes });
    return last;
  }

  function held(fd) {
    if (!open.has(fd)) throw error("EBADF");
    return open.get(fd);
  }

  function flush(f, kind) {
    const data = f.data, mtime = Date.now();
    return transact(kind, async (t) => {
      const file = await t.get(f.path);
      if (file?.ino !== f.ino) throw error("EIO"); // somebody removed it, and what was written with it
      await t.put({ ...file, data, mtime });
    }).then(() => { f.kept = data; });
  }

  function resize(data, length) {
    const out = new Uint8Array(length);
    out.set(data.subarray(0, length));
    return out;
  }

  const stat = (file) => ({
    dev: 1, ino: file.ino, mode: file.mode, nlink: 1, uid: 0, gid: 0, rdev: 0,
    size: file.data?.length ?? 0, blksize: 4096, blocks: 0,
    atimeMs: file.mtime, mtimeMs: file.mtime, ctimeMs: file.mtime,
    isDirectory: () => !file.data,
  });

  const said = ["", "", ""]; // lines of output that have not ended

  function print(fd, bytes) {
    const lines = (said[fd] + new TextDecoder().decode(bytes)).split("\n");
    said[fd] = lines.pop();
    for (const line of lines) (fd === 2 ? console.error : console.log)(line);
    return bytes.length;
  }

  const notHere = () => { throw error("ENOSYS"); };

  const calls = {
    open(name, flags, mode) {
      const path = resolve(name);
      if (!(flags & (O.O_CREAT | O.O_TRUNC))) return then(find(path), (file) => opened(file, flags));
      const made = fresh(path, FILE | mode & MODE, EMPTY);
      return transact(LOOSE, async (t) => {
        let file = flags & O.O_CREAT ? await t.get(path) : await need(t, path);
        if (file && flags & O.O_EXCL && file.ino !== made.ino) throw error("EEXIST");
        if (!file) {
          await needFolder(t, above(path));
          await t.put(file = made);
        } else if (file.data && flags & O.O_TRUNC) {
          await t.put(file = { ...file, data: EMPTY, mtime: made.mtime });
        }
        return file;
      }).then((file) => opened(file, flags));
    },
    close(fd) {
      const f = held(fd);
      open.delete(fd);
      if (f.data !== f.kept) return flush(f, LOOSE);
    },
    read(fd, buffer, offset, length, position) {
      if (fd === 0) return 0;
      const f = held(fd);
      if (!f.data) throw error("EISDIR");
      const at = position ?? f.at;
      const part = f.data.subarray(at, at + length);
      buffer.set(part, offset);
      if (position === null) f.at += part.length;
      return part.length;
    },
    write(fd, buffer, offset, length, position) {
      const bytes = buffer.subarray(offset, offset + length);
      if (fd === 1 || fd === 2) return print(fd, bytes);
      const f = held(fd);
      if (!f.writes) throw error("EBADF");
      const at = f.flags & O.O_APPEND ? f.data.length : position ?? f.at;
      f.data = resize(f.data, Math.max(f.data.length, at + length));
      f.data.set(bytes, at);
      if (position === null) f.at = at + length;
      return length;
    },
    ftruncate(fd, length) {
      const f = held(fd);
      if (!f.writes) throw error("EINVAL");
      f.data = resize(f.data, length);
    },
    fsync(fd) {
      const f = held(fd);
      return f.data ? flush(f, WRITE) : change(f.path, () => ({})); // a folder: with it all before is on the disk
    },
    fstat: (fd) => fd <= 2 ? stat(fresh("", FILE | MODE, EMPTY)) : stat(held(fd)),
    stat: (path) => then(find(resolve(path)), stat),
    lstat: (path) => then(find(resolve(path)), stat),
    chmod: (path, mode) => change(resolve(path), (file) => ({ mode: file.mode & ~MODE | mode & MODE })),
    fchmod(fd, mode) {
      const f = held(fd);
      f.mode = f.mode & ~MODE | mode & MODE;
      return change(f.path, () => ({ mode: f.mode }));
    },
    utimes: (path, _, mtime) => change(resolve(path), () => ({ mtime: mtime * 1000 })),
    truncate: (path, length) => change(resolve(path), (file) => {
      if (!file.data) throw error("EISDIR");
      return { data: resize(file.data, length) };
    }),
    mkdir(name, mode) {
      const path = resolve(name), made = fresh(path, FOLDER | mode & MODE, null);
      return transact(WRITE, async (t) => {
        const file = await t.get(path);
        if (file && file.ino !== made.ino) throw error("EEXIST");
        await needFolder(t, above(path));
        await t.put(made);
      });
    },
    readdir(name) {
      const path = resolve(name), prefix = path === "/" ? path : path + "/";
      return transact(READ, async (t) => {
        await need(t, path);
        await needFolder(t, path);
        const all = (await t.under(prefix)).filter((f) => f.path !== path && above(f.path) === path);
        listed = { path, files: new Map(all.map((f) => [f.path, f])) };
        return all.map((f) => f.path.slice(prefix.length));
      });
    },
    rename(from, to) {
      const old = resolve(from), path = resolve(to);
      let moved;
      return transact(WRITE, async (t) => {
        const there = await t.get(path);
        if (moved !== undefined && there?.ino === moved) return; // done before the connection was lost
        const file = await need(t, old);
        if (old === path) return;
        if (!file.data) notHere();
        if (there && !there.data) throw error("EISDIR");
        await needFolder(t, above(path));
        moved = file.ino;
        await t.put({ ...file, path });
        await t.remove(old);
      }).then(() => {
        for (const f of open.values()) if (f.path === old && f.ino === moved) f.path = path;
      });
    },
    link(from, to) {
      const path = resolve(to);
      let made;
      return transact(WRITE, async (t) => {
        const file = await need(t, resolve(from)), there = await t.get(path);
        if (made !== undefined && there?.ino === made) return;
        if (there) throw error("EEXIST");
        if (!file.data) throw error("EPERM");
        await needFolder(t, above(path));
        made = file.ino;
        await t.put({ ...file, path });
      });
    },
    unlink: (path) => remove(resolve(path), async (t, file) => {
      if (!file.data) throw error("EISDIR");
    }),
    rmdir: (path) => remove(resolve(path), async (t, file) => {
      if (file.data) throw error("ENOTDIR");
      if ((await t.under(file.path + "/")).length > 0) throw error("ENOTEMPTY");
    }),
    readlink: (path) => then(find(resolve(path)), () => { throw error("EINVAL"); }), // there are no links
    symlink: notHere, chown: notHere, fchown: notHere, lchown: notHere,
  };

  function remove(path, check) {
    let seen = false;
    return transact(WRITE, async (t) => {
      if (seen && !await t.get(path)) return;
      const file = await need(t, path);
      await check(t, file);
      seen = true;
      await t.remove(path);
    });
  }

  // Each call has the program's function as its last argument: function(error, value).
  function answering(call) {
    return (...args) => {
      const answer = args.pop();
      let value;
      try {
        value = call(...args);
      } catch (e) {
        answer(e);
        return;
      }
      if (!(value instanceof Promise)) {
        answer(null, value);
        return;
      }
      value.then((v) => { answer(null, v); }, (e) => { answer(known(e) ? e : error("EIO")); }).finally(() => { listed = null; });
    };
  }

  globalThis.fs = { constants: O, writeSync: print };
  for (const [name, call] of Object.entries(calls)) globalThis.fs[name] = answering(call);
  globalThis.process = {
    pid: 1, ppid: 0, cwd: () => "/", chdir: notHere, umask: () => 0,
    getuid: () => 0, getgid: () => 0, geteuid: () => 0, getegid: () => 0, getgroups: () => [],
  };
  globalThis.path = { resolve };
  globalThis.pocketFolder = { ready };
})();
