# python3 speed.py
"""How long scipy's solve_ivp takes for the first leader of rigs.json, beside the Go code.

For each method it seeks the loosest tolerance that keeps the depth of the point fly
within an error, and times that. The errors are the 0.1 % that the Go code promises
and the 0.0001 % that it keeps on this rig. Where go is installed, the benchmark of the
package is run and the ratio to scipy's fastest given.
"""
import os
import re
import subprocess
import sys
import time

sys.dont_write_bytecode = True
import shapes  # noqa: E402


def best_time(f):
    best = 1e9
    for _ in range(7):
        start = time.perf_counter()
        f()
        best = min(best, time.perf_counter() - start)
    return best


def main():
    rig = shapes.rigs()[0]
    depth = shapes.shape(rig, 1e-12)[3]
    fastest = {}
    for error in (1e-3, 1e-6):
        for method in ("RK23", "RK45", "DOP853", "LSODA", "Radau"):
            for digits in range(2, 24):
                rtol = 10 ** (-digits / 2)
                if abs(shapes.shape(rig, rtol, method)[3] / depth - 1) <= error:
                    took = best_time(lambda: shapes.shape(rig, rtol, method))
                    fastest[error] = min(took, fastest.get(error, 1e9))
                    print("error %g: %-6s rtol %.0e  %8.1f us" % (error, method, rtol, took * 1e6))
                    break
    try:
        text = subprocess.run(["go", "test", "-run", "^$", "-bench", "^BenchmarkTow$", "."],
                              cwd=os.path.dirname(shapes.HERE), capture_output=True, text=True).stdout
    except OSError:
        return
    found = re.search(r"BenchmarkTow\S*\s+\d+\s+([\d.]+) ns/op", text)
    if found:
        us = float(found.group(1)) / 1000
        print("Go: %.1f us" % us)
        for error, took in fastest.items():
            print("error %g: scipy takes %.0f times as long" % (error, took * 1e6 / us))


if __name__ == "__main__":
    main()
