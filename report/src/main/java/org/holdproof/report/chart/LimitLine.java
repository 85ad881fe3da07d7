package org.holdproof.report.chart;

/**
 * A temperature limit over the part of the record it is for.
 *
 * @param label the rule's printed figure and what it is for
 */
public record LimitLine(double celsius, long fromMillis, long toMillis, String label) {}
