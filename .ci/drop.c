/* Drops files on a window as a file manager does, by the XDND protocol (freedesktop.org, "Drag-and-Drop Protocol for
 * the X Window System", version 5): drop X Y FILE... at a point of the screen, with absolute paths.
 * Ends with 0 once the window has taken the files and said that it is finished. */
#include <X11/Xatom.h>
#include <X11/Xlib.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { VERSION = 5, PATIENCE = 30, LIST = 1 << 16 };

static Display *screen;
static Window source, target;
static char list[LIST]; /* text/uri-list (RFC 2483): a URI a line */

static Atom atom(const char *name) { return XInternAtom(screen, name, False); }

static void fail(const char *what) {
  fprintf(stderr, "drop: %s\n", what);
  exit(1);
}

/* Appends a path as a file URI, every byte outside the unreserved ones of RFC 3986 as %XX. */
static void append(const char *path) {
  static const char plain[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";
  char *end = list + strlen(list);
  if (3 * strlen(path) + 10 > (size_t)(list + LIST - end)) fail("too many files");
  end += sprintf(end, "file://");
  for (; *path; path++)
    end += strchr(plain, *path) ? sprintf(end, "%c", *path) : sprintf(end, "%%%02X", (unsigned char)*path);
  sprintf(end, "\r\n");
}

static int aware(Window w) {
  Atom type;
  int format;
  unsigned long items, left;
  unsigned char *data = NULL;
  XGetWindowProperty(screen, w, atom("XdndAware"), 0, 1, False, AnyPropertyType, &type, &format, &items, &left, &data);
  if (data) XFree(data);
  return items > 0;
}

/* The window below a point that takes drops: the first one that says so on the way down. */
static Window below(int x, int y) {
  Window root = DefaultRootWindow(screen), at = root, child;
  int within_x, within_y;
  while (XTranslateCoordinates(screen, root, at, x, y, &within_x, &within_y, &child) && child) {
    if (aware(child)) return child;
    at = child;
  }
  fail("no window there takes drops");
  return None;
}

static void tell(const char *message, long a, long b, long c, long d) {
  XEvent e = {.xclient = {.type = ClientMessage, .display = screen, .window = target, .message_type = atom(message), .format = 32}};
  long data[5] = {(long)source, a, b, c, d};
  memcpy(e.xclient.data.l, data, sizeof data);
  XSendEvent(screen, target, False, NoEventMask, &e);
  XFlush(screen);
}

/* Gives the list to whoever asks for it, as the selection's owner. */
static void give(const XSelectionRequestEvent *ask) {
  XEvent e = {.xselection = {.type = SelectionNotify, .requestor = ask->requestor, .selection = ask->selection, .target = ask->target, .time = ask->time, .property = None}};
  if (ask->target == atom("text/uri-list")) {
    XChangeProperty(screen, ask->requestor, ask->property, ask->target, 8, PropModeReplace, (unsigned char *)list, (int)strlen(list));
    e.xselection.property = ask->property;
  }
  XSendEvent(screen, ask->requestor, False, NoEventMask, &e);
  XFlush(screen);
}

/* Serves what comes until a message of that name has come, and gives its second word. */
static long answer(const char *message) {
  Atom wanted = atom(message);
  XEvent e;
  for (;;) {
    XNextEvent(screen, &e); /* the alarm ends a wait that is too long */
    if (e.type == SelectionRequest) give(&e.xselectionrequest);
    if (e.type == ClientMessage && e.xclient.message_type == wanted) return e.xclient.data.l[1];
  }
}

int main(int n, char **word) {
  if (n < 4) fail("usage: drop X Y FILE...");
  int x = atoi(word[1]), y = atoi(word[2]);
  for (int i = 3; i < n; i++) append(word[i]);
  if (!(screen = XOpenDisplay(NULL))) fail("no screen");
  alarm(PATIENCE);
  source = XCreateSimpleWindow(screen, DefaultRootWindow(screen), 0, 0, 1, 1, 0, 0, 0);
  target = below(x, y);
  XSetSelectionOwner(screen, atom("XdndSelection"), source, CurrentTime);
  tell("XdndEnter", (long)VERSION << 24, (long)atom("text/uri-list"), None, None);
  tell("XdndPosition", 0, ((long)x << 16) | y, CurrentTime, (long)atom("XdndActionCopy"));
  if (!(answer("XdndStatus") & 1)) fail("the window takes nothing there");
  tell("XdndDrop", 0, CurrentTime, 0, 0);
  if (!(answer("XdndFinished") & 1)) fail("the window did not take the files");
  return 0;
}
