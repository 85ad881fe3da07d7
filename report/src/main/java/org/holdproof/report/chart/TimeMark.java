package org.holdproof.report.chart;

/**
 * A part of the record marked along the foot of the plot.
 *
 * @param label what happened in it
 */
public record TimeMark(long fromMillis, long toMillis, String label) {}
