using PileController.Rigs.Hardware.OneWire;

namespace PileController.Rigs.Tests.Hardware.OneWire;

public class OneWireAddressTests
{
    [Theory]
    [InlineData("28-0000055f1020", true)]
    [InlineData("28-0000055F1020", false)]
    [InlineData("10-0000055f1020", false)]
    [InlineData("28-0000055f102", false)]
    [InlineData("28-0000055f10200", false)]
    [InlineData("28-../../../etc", false)]
    [InlineData("", false)]
    public void IsValid_Name_IsOneOfAThermometerOrNot(string address, bool expected) =>
        Assert.Equal(expected, OneWireAddress.IsValid(address));
}
