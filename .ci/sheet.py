"""Judges text and pictures of the pages that sheet.sh has made."""
import glob, gzip, os, re, sys

work, kept, update = sys.argv[1:]
bad = []

# What must be cautioned of, by hand from the list of hazards for the method of the job.
PRESS = ["The ram closes with more force", "Anvil and nest close on each other", "the lever jumps", "A pipe or a second person", "A press that is not bolted down",
         "A ram that is not held falls", "The place where a hand press closes is open", "A part or a tool that breaks under load", "This sheet does not replace instruction", "A jam, a crack or a strange sound"]
HAND = ["The palm or the fist used as a hammer", "Pushing again and again", "The parts close on each other", "Anvil and nest close on each other", "A jam, a crack or a strange sound", "This sheet does not replace instruction"]
OTHERS = ["The head of the mallet", "The swing of the mallet", "Blows on a vise", "A vise crushes", "The parts are brittle", "do not stand a shock", "The parts carry electronics", "must not be pressed", "bends across its printed layers",
          "This joint is permanent", "The tooling is heavy", "fails its own assessment", "good on one condition only"]
WANT = {"rim-cap-en": PRESS, "sensor-hood-en": HAND}
NUMBER = {"rim-cap": "FWL-1042", "sensor-hood": "FWL-1044"}
OF = {"en": "of", "de": "von"}

for path in sorted(glob.glob(work + "/*.txt")):
    name = os.path.basename(path)[:-4]
    job, language = name.rsplit("-", 1)
    pages = open(path, encoding="utf-8").read().split("\f")[:-1]
    raw = " ".join(open(path[:-4] + ".raw", encoding="utf-8").read().split())
    for n, text in enumerate(pages, 1):
        flat = " ".join(text.split())
        for want in (NUMBER[job], f"{n} {OF[language]} {len(pages)}"):
            if want not in flat:
                bad.append(f"{name}: page {n} does not say {want!r}")
    for want in WANT.get(name, []):
        if raw.count(want) < 2:
            bad.append(f"{name}: {want!r} does not stand up front and where it bites")
    if name in WANT:
        for hazard in set(PRESS + HAND + OTHERS) - set(WANT[name]):
            if hazard in raw:
                bad.append(f"{name}: {hazard!r} does not apply")
    numbers = {int(n) for n in re.findall(r"(?:WARNING|CAUTION|NOTICE|WARNUNG|VORSICHT|HINWEIS) (\d+)", raw)}
    count = len(PRESS if job == "rim-cap" else HAND)
    if numbers != set(range(1, count + 1)):
        bad.append(f"{name}: cautions {sorted(numbers)}; want 1 to {count}")

# How far the grey of tiles may differ [share of full scale], see sheet.sh.
MEAN, MOST = 0.025, 0.12


def grey(data):
    """Width, height and pixels of a PGM file."""
    head = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
    return int(head[1]), int(head[2]), data[head.end():]


def smaller(w, h, px, by=4):
    """The picture made smaller, each pixel the mean of 4 by 4."""
    w2, h2 = w // by, h // by
    out = bytearray()
    for y in range(h2):
        rows = [px[(y * by + k) * w:(y * by + k) * w + w2 * by] for k in range(by)]
        out += bytes(sum(sum(r[x * by:x * by + by]) for r in rows) // by**2 for x in range(w2))
    return w2, h2, bytes(out)


def tiles(w, h, px, side=8):
    """Means of tiles of 8 by 8 pixels, 17 mm on paper: how letters are rasterised says
    little there, a block that moved or a picture that is gone says much."""
    return [sum(sum(px[y * w + x:y * w + x + side]) for y in range(top, top + side)) / side**2
            for top in range(0, h - side + 1, side) for x in range(0, w - side + 1, side)]


compared = 0
for name in sorted(NUMBER):
    for language in OF:
        stem = f"{name}-{language}"
        made = sorted(glob.glob(f"{work}/{stem}-page-*.pgm"))
        small = [smaller(*grey(open(a, "rb").read())) for a in made]
        if update == "yes":
            for old in glob.glob(f"{kept}/{stem}-*.pgm.gz"):
                os.remove(old)
            for n, (w, h, px) in enumerate(small, 1):
                with open(f"{kept}/{stem}-{n:02d}.pgm.gz", "wb") as f:
                    f.write(gzip.compress(b"P5\n%d %d\n255\n" % (w, h) + px, 9, mtime=0))
        want = sorted(glob.glob(f"{kept}/{stem}-*.pgm.gz"))
        if not made or len(made) != len(want):
            bad.append(f"{stem}: {len(made)} pages; {len(want)} are kept")
            continue
        for (w, h, one), b in zip(small, want):
            w2, h2, two = grey(gzip.open(b).read())
            if (w, h) != (w2, h2):
                bad.append(f"{b}: {w} by {h} pixels; kept {w2} by {h2}")
                continue
            diff = sorted(abs(p - q) / 255 for p, q in zip(tiles(w, h, one), tiles(w, h, two)))
            compared += 1
            if sum(diff) / len(diff) > MEAN or diff[-1] > MOST:
                bad.append(f"{os.path.basename(b)}: tiles differ by {100 * sum(diff) / len(diff):.1f} % on average, {100 * diff[-1]:.0f} % at most")
print("\n".join(bad) or f"{compared} pages look as kept, cautions and numbers as expected")
sys.exit(bool(bad))
