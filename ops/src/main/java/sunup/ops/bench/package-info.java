/** Measurements that anyone can run: figures of this machine, never a test's pass or fail. */
package sunup.ops.bench;
