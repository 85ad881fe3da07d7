package org.holdproof.core.rules;

import java.util.OptionalDouble;

/**
 * Log-linear death of one organism: D-value at a reference temperature and z-value. Below the floor nothing is
 * credited, above the cap the rate stays what it is at the cap.
 *
 * @param dMinutes time for one decimal reduction at the reference temperature, in minutes
 * @param referenceCelsius the reference temperature, in °C
 * @param zCelsius the rise that makes D ten times shorter, in °C
 * @param floorCelsius lowest temperature the figures stand for, in °C
 * @param capCelsius highest temperature the figures stand for, in °C
 * @param targetLog10 the reduction asked for, where the rule is stated as kinetics
 */
public record ThermalDeath(
        String id,
        String title,
        String organism,
        double dMinutes,
        double referenceCelsius,
        double zCelsius,
        double floorCelsius,
        double capCelsius,
        OptionalDouble targetLog10,
        Citation citation)
        implements Rule {

    /** @throws IllegalArgumentException if D or z is not positive, or the floor lies above the cap */
    public ThermalDeath {
        if (!(dMinutes > 0) || !(zCelsius > 0) || !(floorCelsius <= capCelsius)) {
            throw new IllegalArgumentException(id + ": D and z must be positive and the floor at most the cap");
        }
    }
}
