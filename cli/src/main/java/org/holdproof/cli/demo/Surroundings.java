package org.holdproof.cli.demo;

import org.holdproof.core.heat.MediumSchedule.Segment;

/**
 * What the simulated meat lies in for a while.
 *
 * @param minutes how long, in whole minutes
 * @param felt the temperature that acts on the surface, in °C; in a smoker evaporation holds bare meat far below the air
 * @param coefficient surface coefficient, in W/(m² K)
 * @param air what a probe beside the meat shows in the smoker, on the bench or in the chiller, in °C
 * @param bath what a probe in the bath shows, in °C
 */
record Surroundings(int minutes, double felt, double coefficient, double air, double bath) {
    Segment segment() {
        return Segment.hold(minutes, felt, coefficient);
    }
}
