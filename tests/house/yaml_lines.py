# SPDX-License-Identifier: MIT
# The texts of a rule file by the key they stand under, without a YAML library: keys begin a line or an inline map, and a
# text goes on until the next key.
import re

KEY = re.compile(r"(?:^|[{,]|- )\s*\"?([a-z_]+)\"?:(?: |$)", re.M)


def texts(name):
    key, number = None, 0
    for line in open(name, encoding="utf-8"):
        number += 1
        at = 0
        for hit in KEY.finditer(line):
            if key:
                yield number, key, line[at:hit.start()]
            key, at = hit.group(1), hit.end()
        if key:
            yield number, key, line[at:]
