using Triage.Workshop.Answers.Wording;
using Xunit;

namespace Triage.Workshop.Tests.Answers;

public sealed class PriceTest
{
    /// <summary>A resistor of 0.05 is not free, nobody weighs cents of a repair, and nothing costs minus nothing.</summary>
    [Theory]
    [InlineData(0.05, "0.05")]
    [InlineData(0.234, "0.23")]
    [InlineData(4.52, "4.5")]
    [InlineData(18.32, "18")]
    [InlineData(-0.001, "0")]
    [InlineData(0, "0")]
    public void Says_as_many_digits_as_matter(double amount, string said) => Assert.Equal(said, Price.Say(amount));
}
