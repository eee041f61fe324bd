using Triage.Measurements.Quantities;

namespace Triage.Measurements.Instruments;

/// <summary>Where a reading lies when all is well.</summary>
/// <param name="Low">Lowest good value.</param>
/// <param name="High">Highest good value, not below <paramref name="Low"/>.</param>
/// <param name="Unit">Unit of both.</param>
/// <param name="By">Where the expectation comes from.</param>
public sealed record ExpectedRange(double Low, double High, Unit Unit, ExpectedBy By)
{
    /// <summary>A nominal value within percent either way; an aluminium electrolytic may be −20 / +50.</summary>
    public static ExpectedRange Within(Quantity nominal, double minusPercent, double plusPercent, ExpectedBy by)
    {
        var (a, b) = (nominal.Value * (1 - (minusPercent / 100)), nominal.Value * (1 + (plusPercent / 100)));
        return new ExpectedRange(Math.Min(a, b), Math.Max(a, b), nominal.Unit, by);
    }

    /// <summary>The same voltage as a meter shows it that loads its source.</summary>
    public ExpectedRange Loaded(double sourceOhms, double inputOhms) => this with
    {
        Low = Loading.Shown(Low, sourceOhms, inputOhms),
        High = Loading.Shown(High, sourceOhms, inputOhms),
    };
}

/// <summary>Where an expectation comes from, surest last.</summary>
public enum ExpectedBy
{
    Rating,
    Drawing,
    SisterChannel,
    WorkingUnit,
}
