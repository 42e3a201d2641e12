/**
 * Who owns a morning: the actor that decides, appends, answers and tells, one a morning, and the
 * registry that opens them over a journal. On plain interfaces, so that it also runs under a
 * simulated clock and disk.
 */
package sunup.suites;
