using PileController.Watch;

namespace PileController.Tests.Watch;

public class SupervisorTests
{
    [Fact]
    public void TakesLonger_AsksForThatManyMicroseconds()
    {
        List<string> said = [];
        new Supervisor(said.Add).TakesLonger(TimeSpan.FromSeconds(52.5));

        Assert.Equal(["EXTEND_TIMEOUT_USEC=52500000"], said);
    }
}
