using PileController.Control.Decisions;
using PileController.Service;

namespace PileController.Tests.Service;

public class CommandInboxTests
{
    [Fact]
    public void Inbox_Full_TurnsTheNextAway()
    {
        CommandInbox inbox = new(1);
        for (int posted = 0; posted < CommandInbox.Capacity; posted++)
        {
            Assert.True(inbox.TryPost(new SetServicing(true), out _));
        }

        Assert.False(inbox.TryPost(new SetServicing(true), out _));
        Assert.Equal(CommandInbox.Capacity, inbox.Drain(1).Count);
        Assert.True(inbox.TryPost(new SetServicing(true), out long sequence));
        Assert.Equal(2, sequence);
    }

    [Fact]
    public void Inbox_Drained_KeepsOrderAndIsEmptyAfter()
    {
        CommandInbox inbox = new(7);
        inbox.TryPost(new SetServicing(true), out _);
        inbox.TryPost(new SetServicing(false), out _);

        Assert.Equal([new SetServicing(true), new SetServicing(false)], inbox.Drain(7));
        Assert.Empty(inbox.Drain(8));
    }
}
