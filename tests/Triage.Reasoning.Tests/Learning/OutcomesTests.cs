using Triage.Reasoning.Learning;
using Xunit;
using static Triage.Reasoning.Tests.Learning.SmallBench;

namespace Triage.Reasoning.Tests.Learning;

public class OutcomesTests
{
    [Fact]
    public void SevenOfTen_UnderABetaOneOne_IsBetaEightFour()
    {
        Learned learned = Learn(Enumerable.Range(0, 10).Select(i => Reset($"{i}", works: i < 7, held: null)));

        Assert.Equal(8 / 12.0, learned.Works("cold-start", "regulator-short")!.Value.Mean, 12);
        Assert.Equal(12, learned.Works("cold-start", "regulator-short")!.Value.Weight, 12);
    }

    [Fact]
    public void NoNews_IsNoNews()
    {
        Learned learned = Learn(Reset("1", true, null), Reset("2", false, false), Reset("3", true, true));

        Assert.Equal(new Estimate(2 / 3.0, 3), learned.Holds("cold-start", "regulator-short"));
    }

    [Fact]
    public void ARepeat_CountsOnce()
    {
        JobRecord twice = Reset("1", false, null) with { Tried = [new("cold-start", false, null), new("cold-start", true, null)] };

        Assert.Equal(new Estimate(1 / 3.0, 3), Learn(twice).Works("cold-start", "regulator-short"));
    }

    [Fact]
    public void AFailure_IsNoEvidenceAgainstACauseBesideOneThatTheActionNeverTouches()
    {
        JobRecord both = Reset("1", false, null) with { Causes = [new("regulator-short"), new("jack-loose")] };

        Assert.Equal(0.5, Learn(both).Works("cold-start", "regulator-short")!.Value.Mean, 12);
    }

    [Fact]
    public void AFaultThatTheActionDoesNotName_HasNoEstimate()
    {
        Assert.Null(Learn(Reset("1", true, true)).Works("cold-start", "jack-loose"));
    }

    static JobRecord Reset(string id, bool works, bool? held) =>
        Job(id, "regulator-short") with { Tried = [new("cold-start", works, held)] };
}
