// SPDX-License-Identifier: MIT
// An example of each form of words of age, its years, and whose custom they are; a test reads each.
#include "notes/age.h"

#define CATALOGS "museum catalogs as remembered, no source"
#define OURS "the split is ours, no source"

const struct age_row age_table[AGE_ROWS] = {
    {"1920s", 1920, 1929, "arithmetic"},
    {"early 1920s", 1920, 1923, OURS},
    {"mid 1920s", 1924, 1926, OURS},
    {"late 1920s", 1927, 1929, OURS},
    {"1800s", 1800, 1899, "arithmetic"},
    {"19th century", 1801, 1900, "arithmetic"},
    {"early 19th century", 1801, 1833, CATALOGS},
    {"mid-19th century", 1834, 1866, CATALOGS},
    {"late 19th century", 1867, 1900, CATALOGS},
    {"end of the 19th century", 1890, 1900, OURS},
    {"second quarter of the 18th century", 1726, 1750, "arithmetic"},
    {"first half of the 20th century", 1901, 1950, "arithmetic"},
    {"last third of the 18th century", 1767, 1800, "arithmetic"},
    {"1920s-30s", 1920, 1939, "from the first to the last named"},
    {"late 19th to early 20th century", 1867, 1933, "from the first to the last named"},
    {"c. 1890", 1880, 1900, "ten years each way, ours"},
    {"ca. 1900-10", 1900, 1910, "as said"},
    {"between 1880 and 1890", 1880, 1890, "as said"},
    {"before 1914", 0, 1913, "as said"},
    {"1914 or earlier", 0, 1914, "as said"},
    {"after 1945", 1945, 0, "as said"},
    {"turn of the century", 1890, 1910, "common practice, no source; a hint only"},
    {"Georgian", 1714, 1837, "reigns, as V&A British Galleries has them; a hint only"},
    {"Regency", 1811, 1820, "reigns; a hint only"},
    {"Victorian", 1837, 1901, "reigns, as V&A British Galleries has them; a hint only"},
    {"early Victorian", 1837, 1850, "from memory; a hint only"},
    {"late Victorian", 1876, 1901, "from memory; a hint only"},
    {"Edwardian", 1901, 1910, "reigns; a hint only"},
    {"Art Nouveau", 1890, 1910, "Social History Curators Group, Design Style; a hint only"},
    {"Art Deco", 1920, 1939, "Social History Curators Group, Design Style; a hint only"},
    {"interwar", 1918, 1939, "from memory; a hint only"},
    {"postwar", 1945, 0, "from memory; a hint only"},
    {"Edo period", 1615, 1868, "from memory"},
    {"Meiji period", 1868, 1912, "from memory"},
    {"Ming dynasty", 1368, 1644, "from memory"},
    {"Qing dynasty", 1644, 1911, "from memory"},
    {"mid-century style", 0, 0, "a style: a shape is made again"},
};
