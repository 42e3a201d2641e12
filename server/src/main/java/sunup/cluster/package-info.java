/**
 * Several nodes as one board: who is there, which of them owns which morning, and how commands and
 * frames get from one to another. What is decided here is only a hint; the epoch in the journal
 * decides. {@link sunup.cluster.Placement} is plain and runs on any {@link sunup.cluster.Bus} and
 * {@link sunup.cluster.Members}.
 */
package sunup.cluster;
