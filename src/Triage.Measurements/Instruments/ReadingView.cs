namespace Triage.Measurements.Instruments;

/// <summary>How a part's own value becomes what is seen at its legs.</summary>
/// <param name="Scale">The axis.</param>
/// <param name="Parallel">P(something in parallel matters).</param>
/// <param name="ParallelAdds">True for capacitance, where what lies in parallel raises the reading; otherwise it lowers it.</param>
internal readonly record struct ReadingView(ReadingScale Scale, double Parallel, bool ParallelAdds)
{
    /// <summary>Density of a reading on the axis.</summary>
    public double Density(StateExpectation state, double value, double accuracy)
    {
        var (from, to) = (Scale.At(value - accuracy), Scale.At(value + accuracy));
        var own = Trapezium(Scale.At(state.Low), Scale.At(state.High), from, to);
        var (low, high) = Bypassed(state);
        return ((1 - Parallel) * own) + (Parallel * Trapezium(low, high, from, to));
    }

    /// <summary>P(the reading lies beyond a limit).</summary>
    public double Beyond(StateExpectation state, double limit)
    {
        var own = Above(Scale.At(state.Low), Scale.At(state.High), Scale.At(limit));
        var (low, high) = Bypassed(state);
        return ((1 - Parallel) * own) + (Parallel * (ParallelAdds ? Above(low, high, Scale.At(limit)) : 0));
    }

    private (double Low, double High) Bypassed(StateExpectation state)
    {
        var bottom = Scale.Logarithmic ? Scale.At(0) : Math.Min(0, state.Low);
        return ParallelAdds
            ? (Scale.At(state.Low), Math.Max(Scale.At(state.High), bottom + Scale.Span))
            : (bottom, Scale.At(state.High));
    }

    /// <summary>Convolution of an even spread over [low, high] with an even error whose window about the reading is [from, to].</summary>
    private static double Trapezium(double low, double high, double from, double to)
    {
        const double Hair = 1e-9; // keeps exact values and exact instruments from dividing by zero
        (low, high, from, to) = (low - Hair, high + Hair, from - Hair, to + Hair);
        var shared = Math.Min(high, to) - Math.Max(low, from);
        return shared <= 0 ? 0 : shared / ((high - low) * (to - from));
    }

    private static double Above(double low, double high, double limit) =>
        high <= limit ? 0 : low >= limit ? 1 : (high - limit) / (high - low);
}
