/* Starts a program on an empty screen and says after how many milliseconds its first frame stood there: frame COMMAND...
 * A frame stands there once a row of the screen has more colours than a blank window. The program is then ended. */
#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>

enum { COLOURS = 8, PATIENCE_MS = 30000, ROWS = 40 };

static double now_ms(void) {
  struct timespec t;
  clock_gettime(CLOCK_MONOTONIC, &t);
  return t.tv_sec * 1e3 + t.tv_nsec / 1e6;
}

/* Counts the colours of a row of pixels, as far as they matter. */
static int colours(XImage *row) {
  unsigned long seen[COLOURS];
  int n = 0;
  for (int x = 0; x < row->width && n < COLOURS; x++) {
    unsigned long colour = XGetPixel(row, x, 0);
    int i = 0;
    while (i < n && seen[i] != colour) i++;
    if (i == n) seen[n++] = colour;
  }
  return n;
}

static int drawn(Display *screen) {
  Window root = DefaultRootWindow(screen);
  int width = DisplayWidth(screen, 0), height = DisplayHeight(screen, 0), found = 0;
  for (int i = 1; i < ROWS && !found; i++) {
    XImage *row = XGetImage(screen, root, 0, height * i / ROWS, (unsigned)width, 1, AllPlanes, ZPixmap);
    if (!row) continue;
    found = colours(row) == COLOURS;
    XDestroyImage(row);
  }
  return found;
}

int main(int n, char **word) {
  Display *screen = XOpenDisplay(NULL);
  if (n < 2 || !screen) {
    fprintf(stderr, n < 2 ? "usage: frame COMMAND...\n" : "frame: no screen\n");
    return 2;
  }
  double began = now_ms();
  pid_t child = fork();
  if (child == 0) {
    execvp(word[1], word + 1);
    _exit(127);
  }
  int stands = 0;
  while (!(stands = drawn(screen)) && now_ms() - began < PATIENCE_MS) usleep(2000);
  double took = now_ms() - began;
  kill(child, SIGKILL);
  waitpid(child, NULL, 0);
  if (!stands) {
    fprintf(stderr, "frame: nothing was drawn\n");
    return 1;
  }
  printf("%.0f\n", took);
  return 0;
}
