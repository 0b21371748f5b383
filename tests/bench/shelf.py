# SPDX-License-Identifier: MIT
# retitle and apply over a large stock file, beside cp with fsync and beside Python's csv.
#   shelf.py COMMAND ROWS     in a folder on the disk that is to be measured
import csv, os, statistics, subprocess, sys, time

command, rows = sys.argv[1], int(sys.argv[2])
here = os.path.dirname(os.path.abspath(__file__))
stale = ["--older-than", "60d", "--today", "2025-11-25", "--quiet"]

def make(name, count, percent):
    with open(name, "wb") as out:
        subprocess.run(["awk", "-v", "n=%d" % count, "-v", "stale=%g" % percent, "-v", "seed=1", "-f", here + "/shelf.awk"], stdout=out, check=True)

def run(words, out=subprocess.DEVNULL):
    begun = time.monotonic()
    child = subprocess.Popen(words, stdout=out)
    status, usage = os.wait4(child.pid, 0)[1:]
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode: sys.exit("%s ended with status %d" % (" ".join(words), child.returncode))
    return time.monotonic() - begun, usage.ru_maxrss

def retitle(name, *more, out=subprocess.DEVNULL): return run([command, "retitle", *stale, *more, name], out)
def median(function, times): return statistics.median(function() for _ in range(times))

def throughput(percent):
    make("all.csv", rows, percent)
    size = os.path.getsize("all.csv")
    with open("proposals.csv", "wb") as out: seconds, peak = retitle("all.csv", out=out)
    with open("proposals.csv", newline="", encoding="utf-8") as f: proposed = sum(1 for _ in csv.reader(f)) - 1
    bound = (64 << 10) + 16 * rows / 1024
    print("retitle, %g %% stale: %d rows of %.0f bytes in %.1f s: %.0f rows/s, %.1f MB/s, %.0f proposals/s" %
          (percent, rows, size / rows, seconds, rows / seconds, size / seconds / 1e6, proposed / seconds))
    print("retitle-memory-%g %.2f (%d KiB of the %d KiB that 64 MiB and 16 bytes a row are)" % (percent, peak / bound, peak, bound))

def scan():
    seconds = median(lambda: run([command, "retitle", "--older-than", "9000d", "--today", "2025-11-25", "--quiet", "all.csv"])[0], 5)
    size = os.path.getsize("all.csv")
    begun = time.monotonic()
    with open("all.csv", newline="", encoding="utf-8") as f: count = sum(1 for _ in csv.reader(f))
    theirs = time.monotonic() - begun
    print("retitle, nothing stale: %.2f s, %.0f rows/s, %.0f MB/s" % (seconds, rows / seconds, size / seconds / 1e6))
    print("scan-ratio %.1f (Python's csv, reading alone: %.2f s)" % (theirs / seconds, theirs))

def cores():
    make("part.csv", rows // 50, 20)
    one, two = [], []
    for _ in range(3):
        one.append(retitle("part.csv", "--jobs", "1")[0])
        two.append(retitle("part.csv", "--jobs", "2")[0])
    print("two-cores-ratio %.2f (one %.2f s, two %.2f s, %d rows, 20 %% stale, medians of 3; best by best %.2f)" %
          (statistics.median(one) / statistics.median(two), statistics.median(one), statistics.median(two), rows // 50, min(one) / min(two)))

def tenfold():
    make("ten.csv", rows // 100, 20)
    make("hundred.csv", rows // 10, 20)
    small, large = [], []
    for _ in range(5):
        small.append(retitle("ten.csv")[0])
        large.append(retitle("hundred.csv")[0])
    small, large = statistics.median(small), statistics.median(large)
    print("tenfold-ratio %.2f (%d rows %.2f s, %d rows %.2f s, medians of 5)" % (large / small / 10, rows // 100, small, rows // 10, large))

def force(name):
    for path in (name, "."):
        file = os.open(path, os.O_RDONLY)
        os.fsync(file)
        os.close(file)

def copy():
    begun = time.monotonic()
    run(["cp", "all.csv", "new.csv"])
    force("new.csv")
    seconds = time.monotonic() - begun
    os.unlink("new.csv")
    return seconds

def apply():
    seconds = run([command, "apply", "all.csv", "approved.csv", "--write", "new.csv", "--store", "ledger", "--quiet"])[0]
    os.unlink("new.csv")
    return seconds

def python():
    begun = time.monotonic()
    with open("approved.csv", newline="", encoding="utf-8") as f:
        wanted = {r["id"]: (r["old_title"], r["new_title"]) for r in csv.DictReader(f) if r["approve"] == "yes"}
    with open("all.csv", newline="", encoding="utf-8") as f, open("new.csv", "w", newline="", encoding="utf-8") as out:
        writer = csv.writer(out)
        for row in csv.reader(f):
            change = wanted.get(row[0])
            if change and change[0] == row[1]: row[1] = change[1]
            writer.writerow(row)
    force("new.csv")
    seconds = time.monotonic() - begun
    os.unlink("new.csv")
    return seconds

def applying():
    make("all.csv", rows, 5)
    with open("proposals.csv", "wb") as out: retitle("all.csv", out=out)
    with open("proposals.csv", newline="", encoding="utf-8") as f, open("approved.csv", "w", newline="", encoding="utf-8") as out:
        reader = csv.DictReader(f)
        writer = csv.DictWriter(out, reader.fieldnames, lineterminator="\n")
        writer.writeheader()
        for row in reader:
            if row["new_title"]: writer.writerow({**row, "approve": "yes"})
    force("all.csv")
    time.sleep(2.1)  # a file that was changed a moment ago is read twice
    apply()  # makes the ledger, which the others add to
    copies, ours = [], []
    for _ in range(9):
        copies.append(copy())
        ours.append(apply())
    theirs = median(python, 3)
    best = min(copies) / min(ours)
    copied, ours = statistics.median(copies), statistics.median(ours)
    print("apply, 5 %% edited, ledger and fsync: %.3f s; cp and fsync %.3f s; Python's csv and fsync %.2f s" % (ours, copied, theirs))
    print("apply-to-cp %.2f (limit 0.4, medians of 9; best by best %.2f)\napply-to-python %.1f (limit 10)" % (copied / ours, best, theirs / ours))

parts = sys.argv[3:] or ["cores", "tenfold", "applying", "scan", "one", "twenty"]
for part in parts:
    {"cores": cores, "tenfold": tenfold, "applying": applying, "scan": scan,
     "one": lambda: throughput(1), "twenty": lambda: throughput(20)}[part]()
    sys.stdout.flush()
