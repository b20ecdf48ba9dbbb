// SPDX-License-Identifier: GPL-2.0
/*
 * A PWM chip that keeps what it was told last, as a real one does, whoever told it and whether they live.
 * /sys/module/pwm_sim/parameters/state: a line a channel: number, 1 when enabled, period and duty in ns, 1 when inverted.
 */
#include <linux/module.h>
#include <linux/platform_device.h>
#include <linux/pwm.h>

#define CHANNELS	4

static struct platform_device *device;
static struct pwm_chip *chip;
static struct pwm_state applied[CHANNELS];

static int apply(struct pwm_chip *c, struct pwm_device *pwm, const struct pwm_state *state)
{
	applied[pwm->hwpwm] = *state;
	return 0;
}

static const struct pwm_ops ops = { .apply = apply };

static int show(char *text, const struct kernel_param *unused)
{
	int i, n = 0;

	for (i = 0; i < CHANNELS; i++)
		n += scnprintf(text + n, PAGE_SIZE - n, "%d %d %llu %llu %d\n", i, applied[i].enabled,
			       applied[i].period, applied[i].duty_cycle, applied[i].polarity == PWM_POLARITY_INVERSED);
	return n;
}

static const struct kernel_param_ops shown = { .get = show };
module_param_cb(state, &shown, NULL, 0444);

static int __init begin(void)
{
	int err;

	device = platform_device_register_simple("pwm-sim", PLATFORM_DEVID_NONE, NULL, 0);
	if (IS_ERR(device))
		return PTR_ERR(device);
	chip = pwmchip_alloc(&device->dev, CHANNELS, 0);
	if (IS_ERR(chip)) {
		err = PTR_ERR(chip);
		goto no_chip;
	}
	chip->ops = &ops;
	err = pwmchip_add(chip);
	if (!err)
		return 0;
	pwmchip_put(chip);
no_chip:
	platform_device_unregister(device);
	return err;
}

static void __exit end(void)
{
	pwmchip_remove(chip);
	pwmchip_put(chip);
	platform_device_unregister(device);
}

module_init(begin);
module_exit(end);
MODULE_LICENSE("GPL");
MODULE_DESCRIPTION("Simulated PWM chip");
