# SPDX-License-Identifier: MIT
# 1 GB in one quoted cell. What the new file holds is compared with the old in pieces; memory is what the kernel counted.
import os, resource, shutil, subprocess, sys, tempfile

command, HUGE, MOST_MB = sys.argv[1], 10**9, 128
work = tempfile.mkdtemp()
bad = 0

def complain(text):
    global bad
    bad += 1
    print(text)

if shutil.disk_usage(work).free < 3 * HUGE:
    print("fewer than 3 GB are free: a cell of 100 MB stands for it")
    HUGE = 10**8
os.chdir(work)
piece = b'all of it "" as it came, line by line\r\n' * 30000
with open("s.csv", "wb") as f:
    f.write(b"sku,title,note\r\nA1,Brass Lamp,one\r\nB2,\"Tin ")
    left = HUGE
    while left > 0: left -= f.write(piece)
    f.write(b"\",two\r\nC3,Wool Blanket,three\r\n")
with open("p.csv", "w") as f: f.write("id,old_title,new_title,approve\nC3,Wool Blanket,Grey Wool Blanket,yes\nB2,Tin,Biscuit Tin,yes\n")
got = subprocess.run([command, "apply", "s.csv", "p.csv", "--write", "n.csv", "--store", "ledger"], capture_output=True)
if got.returncode not in (0, 4) or not os.path.exists("n.csv"): complain(f"apply: status {got.returncode}: {got.stderr[:300]!r}")
else:
    grown = os.path.getsize("n.csv") - os.path.getsize("s.csv")
    if grown != len("Grey "): complain(f"the new file is {grown} bytes longer")
    with open("s.csv", "rb") as a, open("n.csv", "rb") as b:
        same = os.path.getsize("s.csv") - 40
        while same > 0:
            n = min(same, 1 << 24)
            if a.read(n) != b.read(n): complain("what stands before the row changed is another"); break
            same -= n
        else:
            if a.read().replace(b"C3,Wool", b"C3,Grey Wool") != b.read(): complain("the end is another")
out = subprocess.run([command, "retitle", "--quiet", "s.csv"], capture_output=True)
if out.returncode not in (0, 4): complain(f"retitle: status {out.returncode}: {out.stderr[:300]!r}")
if b"A1," not in out.stdout or b"C3," not in out.stdout: complain("retitle: the rows beside it are not proposed")
if b"s.csv:3" not in got.stderr + out.stderr: complain(f"the row is not told: {(got.stderr + out.stderr)[:300]!r}")
most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
print(f"a cell of {HUGE // 10**6} MB: passed through, at most {most:.0f} MB of memory")
if most > MOST_MB: complain(f"more than {MOST_MB} MB of memory")
shutil.rmtree(work)
sys.exit(bad > 0)
