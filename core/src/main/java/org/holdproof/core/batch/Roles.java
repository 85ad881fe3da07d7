package org.holdproof.core.batch;

/**
 * Who did the work and who looks it over, as roles or names the kitchen chooses to print.
 *
 * @param operator who ran the cook
 * @param reviewer who reviews the record; may be empty
 */
public record Roles(String operator, String reviewer) {}
