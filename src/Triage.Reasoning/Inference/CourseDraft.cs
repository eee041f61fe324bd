namespace Triage.Reasoning.Inference;

/// <summary>A course of one root while evidence is taken in.</summary>
internal sealed class CourseDraft(CourseOfEvents events, double logWeight)
{
    private List<Effect>? _effects;
    private List<Pick>? _picks;

    public CourseOfEvents Events { get; } = events;

    /// <summary>Log of the prior and every factor of product form so far.</summary>
    public double LogWeight { get; set; } = logWeight;

    /// <summary>Two causes in one state explain a bit as noisy-OR.</summary>
    public void Explain(int bit, double q, double p)
    {
        _effects ??= [];
        if (_effects.Count > 0 && _effects[^1] is var last && last.Bit == bit)
        {
            _effects[^1] = new Effect(bit, last.Q * q, last.P + last.Q * p);
        }
        else
        {
            _effects.Add(new Effect(bit, q, p));
        }
    }

    public void Pick(int nominal, double likelihood) => (_picks ??= []).Add(new Pick(nominal, likelihood));

    public Course Finish(double logWeight) => new(Events, logWeight, _effects?.ToArray() ?? [], _picks?.ToArray() ?? []);
}
