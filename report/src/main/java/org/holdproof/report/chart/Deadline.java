package org.holdproof.report.chart;

/**
 * A corner a cooling curve must pass below and to the left of.
 *
 * @param celsius the temperature to reach
 * @param startMillis when its clock started
 * @param dueMillis when it must be reached
 * @param label the rule's printed figure and the time
 */
public record Deadline(double celsius, long startMillis, long dueMillis, String label) {}
