/*
 * Inbreeding coefficients by the textbook method, for comparison: Meuwissen & Luo (1992), Genet. Sel. Evol. 24:305-313.
 * For each animal the ancestors are kept waiting in a list, youngest first; the youngest is taken, its part
 * (coefficient squared times its Mendelian variance) is added, and half of its coefficient goes to each parent.
 *
 * Own code. The waiting list is a sorted linked list as in the paper, or, when compiled with -DWITH_HEAP, a binary heap.
 * Animals come with parents first; full siblings that follow one another reuse the figure of the first.
 *
 * Input: int32 n, then n sires, then n dams (int32, -1 unknown). Output: milliseconds and the sum of F.
 */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

static int32_t *sire, *dam;
static double *F, *part, *coefficient;

#ifdef WITH_HEAP
static int32_t *heap;
static int32_t waiting;

static void add(int32_t animal, double share) {
  if (animal < 0) return;
  if (coefficient[animal] == 0) {
    int32_t at = waiting++;
    while (at > 0 && heap[(at - 1) / 2] < animal) {
      heap[at] = heap[(at - 1) / 2];
      at = (at - 1) / 2;
    }
    heap[at] = animal;
  }
  coefficient[animal] += share;
}

static int32_t take(void) {
  int32_t youngest = heap[0], last = heap[--waiting], at = 0;
  for (;;) {
    int32_t child = 2 * at + 1;
    if (child >= waiting) break;
    if (child + 1 < waiting && heap[child + 1] > heap[child]) child++;
    if (heap[child] <= last) break;
    heap[at] = heap[child];
    at = child;
  }
  heap[at] = last;
  return youngest;
}

static void start(int32_t n) { heap = malloc((n + 1) * sizeof *heap); }
static int empty(void) { return waiting == 0; }
#else
static int32_t *next_older, head = -1;

static void add_after(int32_t from, int32_t animal, double share) {
  if (animal < 0) return;
  if (coefficient[animal] == 0) {
    int32_t *link = from < 0 ? &head : &next_older[from];
    while (*link > animal) link = &next_older[*link];
    next_older[animal] = *link;
    *link = animal;
  }
  coefficient[animal] += share;
}

static void add(int32_t animal, double share) { add_after(-1, animal, share); }

static int32_t take(void) {
  int32_t youngest = head;
  head = next_older[youngest];
  return youngest;
}

static void start(int32_t n) { next_older = malloc((n + 1) * sizeof *next_older); }
static int empty(void) { return head < 0; }
#endif

static double inbreeding_of(int32_t animal) {
  double sum = 0;
  add(animal, 1);
  while (!empty()) {
    int32_t ancestor = take();
    double share = coefficient[ancestor];
    coefficient[ancestor] = 0;
    sum += share * share * part[ancestor];
    add(sire[ancestor], 0.5 * share);
    add(dam[ancestor], 0.5 * share);
  }
  return sum - 1;
}

static double half_inbreeding(int32_t parent) { return parent < 0 ? -1 : F[parent]; }

int main(int count, char **arguments) {
  int32_t n;
  FILE *file = count == 2 ? fopen(arguments[1], "rb") : NULL;
  if (file == NULL || fread(&n, sizeof n, 1, file) != 1) return 1;
  sire = malloc(n * sizeof *sire);
  dam = malloc(n * sizeof *dam);
  if (fread(sire, sizeof *sire, n, file) != (size_t)n || fread(dam, sizeof *dam, n, file) != (size_t)n) return 1;
  fclose(file);
  struct timespec before, after;
  clock_gettime(CLOCK_MONOTONIC, &before);
  F = calloc(n, sizeof *F);
  part = calloc(n, sizeof *part);
  coefficient = calloc(n, sizeof *coefficient);
  start(n);
  double sum = 0;
  for (int32_t animal = 0; animal < n; animal++) {
    part[animal] = 0.5 - 0.25 * (half_inbreeding(sire[animal]) + half_inbreeding(dam[animal]));
    if (sire[animal] < 0 || dam[animal] < 0) F[animal] = 0;
    else if (animal > 0 && sire[animal] == sire[animal - 1] && dam[animal] == dam[animal - 1]) F[animal] = F[animal - 1];
    else F[animal] = inbreeding_of(animal);
    sum += F[animal];
  }
  clock_gettime(CLOCK_MONOTONIC, &after);
  printf("%.3f %.9f\n", (after.tv_sec - before.tv_sec) * 1e3 + (after.tv_nsec - before.tv_nsec) / 1e6, sum);
  return 0;
}
