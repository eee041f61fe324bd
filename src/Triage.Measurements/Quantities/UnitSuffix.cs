namespace Triage.Measurements.Quantities;

/// <summary>What stands behind the digits: prefix and unit, either of which may be left out where the other or the context decides.</summary>
/// <param name="Unit">The unit.</param>
/// <param name="Exponent">Power of ten of the prefix.</param>
/// <param name="Factor">60 for minutes, 3600 for hours, otherwise 1.</param>
internal readonly record struct UnitSuffix(Unit Unit, int Exponent, double Factor)
{
    /// <summary>Reads "", "k", "µF", "k ohm", "mm".</summary>
    /// <param name="suffix">Text behind the digits.</param>
    /// <param name="expected">Unit known from context; null when none is.</param>
    /// <param name="whole">The whole text, for the problem.</param>
    public static UnitSuffix? Read(string suffix, Unit? expected, string whole, out MeasurementProblem? problem)
    {
        problem = null;
        var compact = string.Concat(suffix.Where(c => !char.IsWhiteSpace(c)));
        if (compact.Length == 0)
        {
            if (expected is { } bare)
            {
                return new UnitSuffix(bare, 0, 1);
            }

            problem = MeasurementProblems.NoUnit(whole);
            return null;
        }

        var found = Spelled(compact) ?? PrefixAlone(compact, expected);
        if (found is null)
        {
            problem = compact is "m" or "G" ? MeasurementProblems.PrefixWithoutUnit(whole, compact) : MeasurementProblems.UnknownUnit(suffix.Trim());
            return null;
        }

        problem = Refuse(found.Value, expected, compact, whole);
        return problem is null ? found : null;
    }

    private static UnitSuffix? Spelled(string compact)
    {
        if (compact.Equals("mfd", StringComparison.OrdinalIgnoreCase))
        {
            return new UnitSuffix(Unit.Farad, -6, 1); // microfarad on old American parts
        }

        if (compact is "mm")
        {
            return new UnitSuffix(Unit.Metre, -3, 1); // the only length at a bench; a bare m would be milli
        }

        if (UnitSymbols.IsUnit(compact, out var unit, out var factor))
        {
            return new UnitSuffix(unit, 0, factor);
        }

        return UnitSymbols.IsPrefix(compact[0], out var exponent) && UnitSymbols.IsUnit(compact[1..], out unit, out factor)
            ? new UnitSuffix(unit, exponent, factor)
            : null;
    }

    /// <summary>A prefix by itself takes the expected unit; without one k and M are ohms, p, n and µ farads, as on parts (IEC 60062).</summary>
    private static UnitSuffix? PrefixAlone(string compact, Unit? expected)
    {
        if (compact.Length != 1 || !UnitSymbols.IsPrefix(compact[0], out var exponent))
        {
            return null;
        }

        Unit? customary = exponent switch
        {
            3 or 6 => Unit.Ohm,
            -6 or -9 or -12 => Unit.Farad,
            _ => null,
        };
        return (expected ?? customary) is { } unit ? new UnitSuffix(unit, exponent, 1) : null;
    }

    private static MeasurementProblem? Refuse(UnitSuffix found, Unit? expected, string compact, string whole)
    {
        var (least, most) = UnitSymbols.PrefixSpan(found.Unit);
        if (expected is { } wanted && wanted != found.Unit)
        {
            return MeasurementProblems.WrongUnit(whole, UnitSymbols.Name(found.Unit), UnitSymbols.Name(wanted));
        }

        return found.Exponent < least || found.Exponent > most || (found.Factor != 1 && found.Exponent != 0)
            ? MeasurementProblems.PrefixNotUsed(compact[..1], UnitSymbols.Name(found.Unit))
            : null;
    }
}
